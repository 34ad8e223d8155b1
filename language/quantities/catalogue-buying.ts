import type { Quantity } from './catalogue.ts';

/** In the measure that stands beside it: kg, m3 loose, m2, m, pieces. */
const amount = { kind: 'number', measure: '', print: 'number', computed: true } as const;
const repeated = { ...amount, computed: false } as const;
const count = { kind: 'count', measure: '', print: 'count', computed: true } as const;
const mass = { kind: 'mass', measure: 'kg', print: 'mass', computed: true } as const;
const volume = { kind: 'volume', measure: 'm3', print: 'stone-volume', computed: true } as const;

const always = { always: true } as const;
const maybe = { always: false } as const;

/** What is to be bought for the whole job, and the order that covers it. */
export const BUYING_QUANTITIES = [
  {
    ...amount,
    ...maybe,
    id: 'need-used',
    owner: 'need',
    key: 'used',
    words: 'Used',
    name: 'used',
    describe: 'What the whole job takes of it, allowances not counted'
  },
  {
    ...repeated,
    ...maybe,
    id: 'need-breakage',
    owner: 'need',
    key: 'breakage',
    words: 'For breakage',
    name: 'for breakage',
    describe: 'Units bought besides, for those that break'
  },
  {
    ...repeated,
    ...maybe,
    id: 'need-keep',
    owner: 'need',
    key: 'keep',
    words: 'Put by',
    name: 'put by',
    describe: 'Units put by for repairs'
  },
  {
    ...amount,
    ...maybe,
    id: 'need-loss',
    owner: 'need',
    key: 'loss',
    words: 'For loss',
    name: 'for loss',
    describe: 'Spilt, left in the heap, trodden in'
  },
  {
    ...amount,
    ...maybe,
    id: 'need-kept-back',
    owner: 'need',
    key: 'keptBack',
    words: 'Kept back',
    name: 'kept back',
    describe: 'Joint filler for the second sweeping'
  },
  {
    ...amount,
    ...maybe,
    id: 'need-moisture',
    owner: 'need',
    key: 'moisture',
    words: 'Moisture',
    name: 'moisture',
    describe: 'Water that is weighed and paid with it'
  },
  {
    ...amount,
    ...maybe,
    id: 'need-settling',
    owner: 'need',
    key: 'settling',
    words: 'For settling',
    name: 'for settling',
    describe: 'Loose volume that is lost on the way'
  },
  {
    ...repeated,
    ...always,
    id: 'need-wanted',
    owner: 'need',
    key: 'wanted',
    words: 'Wanted',
    name: 'wanted',
    describe: 'What the job needs of it in all, allowances counted'
  },
  {
    ...amount,
    ...maybe,
    id: 'need-on-hand',
    owner: 'need',
    key: 'onHand',
    words: 'On hand',
    name: 'on hand',
    describe: 'What lies on hand already'
  },
  {
    ...amount,
    ...maybe,
    id: 'need-delivered',
    owner: 'need',
    key: 'delivered',
    words: 'Delivered',
    name: 'delivered',
    describe: 'What was delivered already'
  },
  {
    ...repeated,
    ...always,
    id: 'need-to-buy',
    owner: 'need',
    key: 'toBuy',
    words: 'To buy',
    name: 'to buy',
    describe: 'What is still to be bought'
  },
  {
    ...repeated,
    ...always,
    id: 'order-need',
    owner: 'order',
    key: 'need',
    words: 'Need',
    name: 'need',
    describe: 'What is to be bought of it, in the measure that this pack is sold by'
  },
  {
    ...repeated,
    ...always,
    id: 'order-pack-holds',
    owner: 'order',
    key: 'packHolds',
    words: 'One holds',
    name: 'what one holds',
    describe: 'What one pack holds; loose: one step'
  },
  {
    ...count,
    ...always,
    id: 'order-count',
    owner: 'order',
    key: 'count',
    words: 'Buy',
    name: 'packs',
    describe: 'Packs to buy; loose: steps'
  },
  {
    ...amount,
    ...always,
    id: 'order-amount',
    owner: 'order',
    key: 'amount',
    words: 'That is',
    name: 'amount',
    describe: 'What all these packs hold of it'
  },
  {
    ...amount,
    ...always,
    id: 'order-left',
    owner: 'order',
    key: 'left',
    words: 'Left over',
    name: 'left over',
    describe: 'What is left over of the item when all that is ordered of it is bought'
  },
  {
    ...mass,
    ...maybe,
    id: 'order-mass',
    owner: 'order',
    key: 'mass',
    words: 'Weight',
    name: 'weight',
    describe: 'Mass of these packs; absent where it is not known'
  },
  {
    ...count,
    ...always,
    id: 'choice-count',
    owner: 'choice',
    key: 'count',
    words: 'Packs',
    name: 'packs',
    describe: 'Packs that cover the need alone; loose: steps'
  },
  {
    ...amount,
    ...always,
    id: 'choice-amount',
    owner: 'choice',
    key: 'amount',
    words: 'That is',
    name: 'amount',
    describe: 'What these packs hold'
  },
  {
    ...amount,
    ...always,
    id: 'choice-left',
    owner: 'choice',
    key: 'left',
    words: 'Left over',
    name: 'left over',
    describe: 'What these packs hold more than is needed'
  },
  {
    ...count,
    ...always,
    id: 'delivery-charge-loads',
    owner: 'delivery-charge',
    key: 'loads',
    words: 'Loads',
    name: 'loads',
    describe: 'Loads that the order from this supplier comes in'
  },
  {
    ...mass,
    ...maybe,
    id: 'delivery-charge-mass',
    owner: 'delivery-charge',
    key: 'mass',
    words: 'Weight',
    name: 'weight',
    describe: 'Mass of all that it brings, as far as it is known'
  },
  {
    ...volume,
    ...maybe,
    id: 'delivery-charge-volume',
    owner: 'delivery-charge',
    key: 'volume',
    words: 'Loose volume',
    name: 'loose volume',
    describe: 'Loose volume of all that it brings, as far as it is known'
  }
] as const satisfies readonly Quantity[];
