import { printAs, printHeight, roundedUp } from '../../measures/print.ts';
import { ownNumbers } from './from-catalogue.ts';
import { length, type Member, type ThingOf, words } from './member.ts';

/** What rules can look at in a gate or a door. */
export const GATE_MEMBERS: readonly Member<'gate'>[] = [
  { ...words('gate', 'gate', 'Its name'), read: ({ gate }) => [gate.name] },
  { ...words('gate', 'kind', 'What it is', ['gate', 'door']), read: ({ gate }) => [gate.kind] },
  {
    ...words('gate', 'swing', 'Whether the leaf strikes the finish before it is open', ['strikes', 'clears']),
    read: ({ gate }) => (gate.clearance === undefined ? [] : [gate.strikes ? 'strikes' : 'clears'])
  },
  ...ownNumbers('gate', 'gate', ({ gate }) => gate),
  {
    ...words('gate', 'strikes-when', 'How far open the leaf is when it strikes, in words'),
    read: ({ gate: { strikesAt }, judged: { system } }) => {
      if (strikesAt === undefined) return [];
      return [strikesAt < SHUT ? 'already when shut' : `when it is open by ${printAs('angle', strikesAt, system)}`];
    }
  },
  {
    ...length('gate', 'strikes-by', 'How far the finish stands above the underside of the leaf, where it does'),
    print: 'thickness',
    read: ({ gate }) => turned(gate.clearance)
  },
  {
    ...length('gate', 'trim-by', 'What is cut off the leaf so that it clears as wanted, rounded up as it is marked'),
    print: 'thickness',
    read: ({ gate, judged: { system } }) => (gate.trim === undefined ? undefined : roundedUp(gate.trim, system))
  },
  {
    ...length('gate', 'proud-by', 'The same, while units stand proud of the finish'),
    print: 'thickness',
    read: ({ gate }) => turned(gate.laidClearance)
  },
  {
    ...words(
      'gate',
      'sill-lies',
      'How the finish lies to the sill, in words: `1/2 in below the sill`, `level with the sill`'
    ),
    read: ({ gate: { sillStep }, judged: { system } }) =>
      sillStep === undefined ? [] : [printHeight(-sillStep, 'the sill', system)]
  },
  {
    ...words('gate', 'channel', 'Whether a channel lies along its opening, or the side that it is in meets one', [
      'along',
      'none'
    ]),
    read: ({ gate }) => [gate.channelAlong ? 'along' : 'none']
  },
  {
    ...length('gate', 'above-sill', 'How far the finish lies above the sill, where it does'),
    print: 'thickness',
    read: ({ gate }) => turned(gate.sillStep)
  }
];

/** What rules can look at in a box: what lies under a lid. */
export const BOX_MEMBERS: readonly Member<'box'>[] = [
  { ...words('box', 'box', 'Its name'), read: ({ box }) => [box.name] },
  {
    ...words('box', 'use', 'Whether it is in use, where that is said', ['in-use', 'out-of-use']),
    read: ({ box }) => (box.inUse === undefined ? [] : [box.inUse ? 'in-use' : 'out-of-use'])
  },
  {
    ...words('box', 'stays', 'What becomes of it: `open` stays under a lid, `buried` is cut down', ['open', 'buried']),
    read: ({ box }) => [box.buried ? 'buried' : 'open']
  },
  ...ownNumbers('box', 'box', ({ box }) => box),
  {
    ...length('box', 'lower-by', 'How far its lid is lowered to the finish, where it stands above it'),
    print: 'thickness',
    read: ({ box }) => turned(box.change)
  }
];

/** What rules can look at in a pipe or cable that is there. */
export const PIPE_MEMBERS: readonly Member<'pipe'>[] = [
  { ...words('pipe', 'pipe', 'Its name'), read: ({ pipe }) => [pipe.name] },
  {
    ...words('pipe', 'carries', 'What runs in it, where that is said', [
      'gas',
      'power',
      'water',
      'irrigation',
      'drainage',
      'sewer',
      'telecoms',
      'lighting',
      'unknown'
    ]),
    read: ({ pipe }) => (pipe.carries === undefined ? [] : [pipe.carries])
  },
  {
    ...words('pipe', 'depth', 'Whether its depth was proven on site', ['proven', 'not-proven']),
    read: ({ pipe }) => [pipe.proven ? 'proven' : 'not-proven']
  },
  {
    ...words('pipe', 'depth-told', 'By what its depth is known, in words'),
    read: ({ pipe }) => [pipe.proven ? 'its depth as proven' : 'its stated depth']
  },
  {
    ...words('pipe', 'depth-caution', 'What its depth is worth, in words'),
    read: ({ pipe }) => [pipe.proven ? 'It was proven only where it was opened' : 'Depth is not proof']
  },
  {
    ...words('pipe', 'dig', 'Whether its line leads over a dig', ['crossed', 'not-crossed']),
    read: ({ pipe }) => [pipe.crossesDig ? 'crossed' : 'not-crossed']
  },
  ...ownNumbers('pipe', 'pipe', ({ pipe }) => pipe, {}, { 'pipe-below-dig-at-best': 'below-dig-but-for-soft-spots' }),
  {
    ...length('pipe', 'within-dig', 'How far it lies above the bottom of the dig, by its stated depth'),
    print: 'thickness',
    read: ({ pipe }) => turned(pipe.belowDig)
  }
];

/** What rules can look at in a drain. */
export const DRAIN_MEMBERS: readonly Member<'drain'>[] = [
  { ...words('drain', 'drain', 'Its name'), read: ({ drain }) => [drain.name] },
  { ...words('drain', 'kind', 'What it is', ['channel', 'gully']), read: ({ drain }) => [drain.kind] },
  ...ownNumbers('drain', 'drain', ({ drain }) => drain),
  {
    ...length('drain', 'grate-above', 'How far its grate stands above the finish, where it does'),
    print: 'thickness',
    read: ({ drain }) => turned(drain.finishAbove)
  }
];

const RAMP_FROM = 1 / 20;
const LANDING_UP_TO = 1 / 48;
/** Metres. */
const LANDING = 1.5;
/** Slopes are no truer than this. */
const SLOPE_TIE = 1e-4;

/** The most that a ramp rises or falls from landing to landing; all that lies between two counts where some of it is ramp. */
function longestRise(stretches: ThingOf<'route'>['route']['stretches']): number {
  let [longest, rise, flat, isRamp] = [0, 0, 0, false];
  for (const { slope, length: run } of stretches) {
    const steepness = Math.abs(slope);
    flat = steepness <= LANDING_UP_TO + SLOPE_TIE ? flat + run : 0;
    rise += steepness * run;
    isRamp ||= steepness > RAMP_FROM + SLOPE_TIE;
    if (flat >= LANDING) [rise, isRamp] = [0, false];
    if (isRamp) longest = Math.max(longest, rise);
  }
  return longest;
}

/** What rules can look at in a way that must be free of steps. */
export const ROUTE_MEMBERS: readonly Member<'route'>[] = [
  { ...words('route', 'route', 'Its name'), read: ({ route }) => [route.name] },
  ...ownNumbers('route', 'route', ({ route }) => route),
  {
    ...length('route', 'rise', 'All that it rises or falls along its line'),
    print: 'thickness',
    read: ({ route }) => route.stretches.reduce((sum, { slope, length: run }) => sum + Math.abs(slope) * run, 0)
  },
  {
    ...length(
      'route',
      'longest-rise',
      'Most that it rises or falls on a ramp without a landing: a ramp is steeper than 1:20, a landing no steeper than 1:48 and 60 in (1.5 m) long'
    ),
    print: 'thickness',
    read: ({ route }) => longestRise(route.stretches)
  }
];

/** What rules can look at in a tape: a distance read between two points. */
export const TAPE_MEMBERS: readonly Member<'tape'>[] = [
  {
    ...words('tape', 'tape', 'The points between which it was read'),
    read: ({ tape }) => [`${tape.from} to ${tape.to}`]
  },
  {
    ...words('tape', 'misfits', 'Whether it misfits most of all tapes, or others do', ['worst', 'others']),
    read: ({ tape }) => [tape.worst ? 'worst' : 'others']
  },
  ...ownNumbers('tape', 'tape', ({ tape }) => tape),
  {
    ...length('tape', 'misfit-size', 'By how much the tape misfits, longer or shorter'),
    read: ({ tape }) => Math.abs(tape.misfit)
  },
  {
    ...words(
      'tape',
      'others-say',
      'What it would have to read by the others, in words; nothing where they do not tell'
    ),
    read: ({ tape: { byTheOthers }, judged: { system } }) =>
      byTheOthers === undefined
        ? []
        : [`: by the others it would have to read ${printAs('length', byTheOthers, system)}`]
  }
];

/** What rules can look at in what was measured on site. */
export const READING_MEMBERS: readonly Member<'reading'>[] = [
  {
    ...words('reading', 'measured-what', 'What was measured', ['height', 'gap', 'slope']),
    read: ({ reading }) => [reading.kind]
  },
  {
    ...words('reading', 'layer', 'The layer whose height was measured', [
      'dig',
      'sub-base',
      'base',
      'bed',
      'as-laid',
      'finish'
    ]),
    read: ({ reading }) => named(reading.layer)
  },
  {
    ...words('reading', 'place', 'The point or line where it was measured'),
    read: ({ reading }) => named(reading.place)
  },
  { ...words('reading', 'area', 'The area that was measured'), read: ({ reading }) => named(reading.area) },
  {
    ...words('reading', 'units-set', 'How the units there are brought down', ['by-hand', 'vibrated']),
    read: ({ reading: { setByHand } }) => (setByHand === undefined ? [] : [setByHand ? 'by-hand' : 'vibrated'])
  },
  ...ownNumbers('reading', 'reading', ({ reading }) => reading),
  {
    ...length('reading', 'below', 'How far it was measured below the design'),
    print: 'thickness',
    read: ({ reading }) => turned(reading.above)
  },
  { ...length('reading', 'gap', 'The gap under a straightedge'), read: ({ reading }) => reading.gap },
  {
    ...length('reading', 'straightedge', 'The length of the straightedge'),
    print: 'length',
    read: ({ reading }) => reading.straightedge
  },
  { ...slope('slope', 'The slope as measured'), read: ({ reading }) => steepness(reading.slope) },
  { ...slope('design-slope', 'The slope by the design there'), read: ({ reading }) => steepness(reading.designSlope) },
  {
    ...slope('slope-off', 'By how much the slope as measured is off the design'),
    print: 'share',
    read: ({ reading }) => slopeOff(reading)
  }
];

/** What rules can look at in what was delivered of a material or a unit. */
export const DELIVERY_MEMBERS: readonly Member<'delivery'>[] = [
  { ...words('delivery', 'delivery', 'The material or unit'), read: ({ delivery }) => [delivery.thing] },
  amountOf('delivered', 'Delivered so far, in the measure told', ({ delivery }) => delivery.delivered),
  amountOf('wanted', 'Needed in the job, in the measure told', ({ delivery }) => delivery.needed),
  amountOf('short', 'Needed less delivered, in the measure told', ({ delivery }) => delivery.short),
  amountOf('surplus', 'Delivered less needed, in the measure told', ({ delivery }) => turned(delivery.short)),
  {
    ...words('delivery', 'still-to-come', 'What is still to come, in its measure'),
    read: thing => amount(thing, thing.delivery.short)
  },
  {
    ...words('delivery', 'delivered-over', 'What was delivered over what is needed, in its measure'),
    read: thing => amount(thing, turned(thing.delivery.short))
  },
  {
    ...words('delivery', 'delivered-so-far', 'What was delivered so far, in its measure'),
    read: thing => amount(thing, thing.delivery.delivered)
  },
  {
    ...words('delivery', 'needed-in-all', 'What the job needs of it, in its measure'),
    read: thing => amount(thing, thing.delivery.needed)
  }
];

function amount(
  { delivery: { measure }, judged: { system } }: ThingOf<'delivery'>,
  value: number | undefined
): readonly string[] {
  return value === undefined ? [] : [printAs(PRINTS[measure], value, system)];
}

const PRINTS = { kg: 'mass', m3: 'stone-volume', m2: 'area', m: 'length', '': 'count' } as const;

/** Opened by less than this, degrees, a leaf is shut. */
const SHUT = 0.05;

function amountOf(
  name: string,
  describe: string,
  read: (thing: ThingOf<'delivery'>) => number | undefined
): Member<'delivery'> {
  return { name, of: 'delivery', measure: '', print: 'number', describe, read };
}

/** The same distance the other way. */
function turned(value: number | undefined): number | undefined {
  return value === undefined ? undefined : -value;
}

function named(name: string | undefined): readonly string[] {
  return name === undefined ? [] : [name];
}

function slope(name: string, describe: string) {
  return { name, of: 'reading', measure: '', print: 'slope', describe } as const;
}

/** Whichever way it was measured. */
function steepness(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Math.abs(value);
}

/** A slope read without its way is taken to run as the design does. */
function slopeOff({ slope: read, designSlope }: ThingOf<'reading'>['reading']): number | undefined {
  return read === undefined || designSlope === undefined ? undefined : Math.abs(Math.abs(read) - Math.abs(designSlope));
}
