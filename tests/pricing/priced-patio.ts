// A patio whose order, hours and prices are told by hand: all invented, to test the arithmetic and the sheets.
import { readFileSync } from 'node:fs';
import type { MoneyWords } from '../../language/job/money-lines.ts';
import type { Evaluation } from '../../language/paving.ts';
import type { CostInputs } from '../../language/pricing/cost-inputs.ts';
import { costsOf } from '../../language/pricing/costs.ts';
import type { QuoteInput } from '../../language/views/text/quote/quote-input.ts';
import { evaluated } from '../language/in-memory.ts';
import { extra, money, share, task } from './inputs.ts';

const SAMPLE = 'samples/first-job.paving';

export const PATIO_MONEY: MoneyWords = {
  labour: money('42'),
  hires: [],
  disposal: {
    key: 'job/disposal',
    charge: { amount: '290', currency: 'USD', written: '290 USD' },
    by: 'container',
    volume: { value: 6, written: '6 m3' }
  },
  extras: [
    extra('Permit of the township', money('120'), { untaxed: true, noMargin: true }),
    extra('Downspout carried under the paving to the lawn, with a pop-up outlet', money('180'))
  ],
  contingency: { share: share(0.08), of: 'materials' },
  overhead: share(0.1),
  profit: { way: 'margin', share: share(0.18) },
  tax: share(0.07),
  excludes: ['Moving any service', 'Work on the neighbours’ side of the fence'],
  client: 'The household',
  quote: {
    key: 'job/quote',
    name: 'quote-1',
    on: '2026-03-02',
    validDays: { value: 30, written: '30 days' }
  }
};

/** The first sample with costs by hand; `more` changes what they are worked out from. */
export async function pricedPatio(more: (all: CostInputs) => CostInputs = all => all): Promise<QuoteInput> {
  const { job, numbers } = (await evaluated(readFileSync(SAMPLE, 'utf8'))) as Required<Evaluation>;
  const [area] = numbers.quantities.areas;
  const base = area!.layers.find(({ role }) => role === 'base')!;
  const { dig } = numbers.quantities;
  const whole = (work: 'base' | 'paving' | 'edging') => [{ area: area!.id, work, amount: 1 }];
  const all = more({
    job: job.key,
    currency: 'USD',
    system: job.system,
    money: PATIO_MONEY,
    ordered: [
      {
        thing: 'material:crushed-stone',
        name: 'crushed-stone',
        tax: 'added',
        packs: [
          {
            words: 'loose',
            amount: base.mass!,
            measure: 'kg',
            price: { amount: '3800000/90718474', currency: 'USD', written: '38 USD per short ton' }
          }
        ],
        shares: whole('base')
      },
      {
        thing: 'unit:slab-16',
        name: 'slab-16',
        tax: 'added',
        packs: [
          { words: 'pallet of 90', amount: 1, measure: '', price: money('315'), deposit: money('20') },
          { words: 'piece', amount: 28, measure: '', price: money('3.95') }
        ],
        shares: whole('paving')
      },
      {
        thing: 'material:spiked-strip',
        name: 'spiked-strip',
        tax: 'added',
        packs: [{ words: 'length of 8 ft', amount: 6, measure: '', price: money('17.25') }],
        shares: area!.edges
          .filter(({ edging }) => edging !== undefined)
          .map(({ name, length }) => ({ area: area!.id, work: 'edging', edge: name, amount: length }))
      },
      { thing: 'material:washed-sand', name: 'washed-sand', shares: [{ area: area!.id, work: 'bed', amount: 1 }] }
    ],
    deliveries: [{ supplier: 'supplier:gravel-pit', name: 'gravel-pit', loads: 1, charge: money('65'), tax: 'added' }],
    tasks: [
      task('dig', 16, { title: 'Dig', task: 'dig', shares: [{ area: area!.id, amount: 1 }] }),
      task('base', 9.5, { title: 'Base', task: 'base', shares: [{ area: area!.id, amount: 1 }] }),
      task('laying', 18, { title: 'Laying', task: 'laying', shares: [{ area: area!.id, amount: 1 }] }),
      task('set-out', 2, { title: 'Set out', task: 'set-out' }),
      task('edging', undefined, { title: 'Edging', task: 'edging' })
    ],
    hires: [
      { hire: { key: 'hire:1', title: 'Plate compactor', charge: money('75'), by: 'day', tasks: [] }, days: 2, span: 4 }
    ],
    takenAway: {
      looseVolume: dig.looseVolume!,
      mass: dig.mass!,
      shares: [{ area: area!.id, amount: dig.looseVolume! }]
    },
    areas: [{ key: area!.id, name: area!.name, netArea: area!.netArea, pointer: '/areas/0/netArea' }],
    netArea: numbers.quantities.totals.netArea
  });
  const same = (text: string): string => text;
  const colours = { strong: same, faint: same, error: same, warning: same, note: same };
  return { job, money: all.money, numbers, costs: costsOf(all)!, colours };
}
