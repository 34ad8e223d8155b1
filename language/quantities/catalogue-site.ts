import type { Quantity } from './catalogue.ts';

const length = { kind: 'length', measure: 'm', print: 'thickness', computed: true } as const;
const read = { kind: 'length', measure: 'm', print: 'thickness', computed: false } as const;
const level = { kind: 'length', measure: 'm', print: 'level', computed: false } as const;
const slope = { kind: 'share', measure: '', print: 'slope', computed: false } as const;
const run = { kind: 'length', measure: 'm', print: 'length', computed: false } as const;

/** In the measure that the delivery names: a mass, a loose volume, pieces. */
const delivery = { owner: 'delivery', kind: 'number', measure: '', print: 'number', computed: true } as const;

const always = { always: true } as const;
const maybe = { always: false } as const;

/** Quantities of what stands in a job besides its areas. */
export const SITE_QUANTITIES = [
  {
    ...run,
    ...always,
    id: 'tape-read',
    owner: 'tape',
    key: 'read',
    words: 'Read',
    name: 'reading',
    describe: 'Distance as the tape reads'
  },
  {
    ...run,
    ...always,
    id: 'tape-fitted',
    owner: 'tape',
    key: 'fitted',
    words: 'Fitted',
    name: 'fitted distance',
    describe: 'Distance between the points when all tapes are fitted together'
  },
  {
    ...read,
    ...always,
    print: 'joint',
    id: 'tape-misfit',
    owner: 'tape',
    key: 'misfit',
    words: 'Misfit',
    name: 'misfit',
    describe: 'Fitted less read'
  },
  {
    ...run,
    ...maybe,
    id: 'tape-by-the-others',
    owner: 'tape',
    key: 'byTheOthers',
    words: 'By the others',
    name: 'distance by the others',
    describe: 'What it would have to read by all the other tapes'
  },
  {
    ...level,
    ...always,
    id: 'measured-height',
    owner: 'measured-height',
    key: 'height',
    words: 'Height',
    name: 'height',
    describe: 'Height above the datum'
  },
  {
    ...run,
    ...maybe,
    id: 'measured-height-reading',
    owner: 'measured-height',
    key: 'reading',
    words: 'Rod reads',
    name: 'rod reading',
    describe: 'What the rod reads there'
  },
  {
    ...level,
    ...maybe,
    id: 'box-finish',
    owner: 'box',
    key: 'finish',
    words: 'Finish there',
    name: 'finish at the box',
    describe: 'Height of the finish at the middle of the box'
  },
  {
    ...level,
    ...maybe,
    id: 'box-lid',
    owner: 'box',
    key: 'lid',
    words: 'Lid',
    name: 'lid',
    describe: 'Height of the lid today'
  },
  {
    ...length,
    ...maybe,
    id: 'box-change',
    owner: 'box',
    key: 'change',
    words: 'Raise the lid',
    name: 'change of the lid',
    describe: 'How far the lid is raised to the finish; less than nought: lowered'
  },
  {
    ...length,
    ...maybe,
    id: 'box-cut-down',
    owner: 'box',
    key: 'cutDown',
    words: 'Cut down by',
    name: 'cut down',
    describe: 'How far a box out of use is cut down at least: from its lid to the lowest bottom of the dig over it'
  },
  {
    ...length,
    ...maybe,
    id: 'box-cut-down-middle',
    owner: 'box',
    key: 'cutDownAtMiddle',
    words: 'at its middle',
    name: 'cut down at the middle',
    describe: 'The same at the middle of the box'
  },
  {
    ...length,
    ...maybe,
    id: 'box-cut-down-soft-spot',
    owner: 'box',
    key: 'cutDownInSoftSpot',
    words: 'in the soft spot',
    name: 'cut down in the soft spot',
    describe: 'The same down to the bottom of a soft spot that reaches over the box'
  },
  {
    kind: 'area',
    measure: 'm2',
    print: 'area',
    computed: true,
    ...maybe,
    id: 'box-tray-area',
    owner: 'box',
    key: 'trayArea',
    words: 'Tray paved',
    name: 'paved tray',
    describe: 'Area paved in the tray of its cover'
  },
  {
    kind: 'count',
    measure: '',
    print: 'count',
    computed: true,
    ...maybe,
    id: 'box-tray-units',
    owner: 'box',
    key: 'trayUnits',
    words: 'Units in the tray',
    name: 'units in the tray',
    describe: 'Units for the tray by its area and the joints, rounded up; cuts come out of them'
  },
  {
    ...level,
    ...maybe,
    id: 'gate-underside',
    owner: 'gate',
    key: 'underside',
    words: 'Underside',
    name: 'underside',
    describe: 'Height of the underside of the leaf'
  },
  {
    ...level,
    ...maybe,
    id: 'gate-highest',
    owner: 'gate',
    key: 'highestFinish',
    words: 'Highest finish in the swing',
    name: 'highest finish in the swing',
    describe: 'The highest finish under the leaf over its whole swing'
  },
  {
    ...length,
    ...maybe,
    id: 'gate-clearance',
    owner: 'gate',
    key: 'clearance',
    words: 'Least clearance',
    name: 'clearance',
    describe: 'From the highest finish in the swing up to the underside; less than nought: the leaf strikes'
  },
  {
    ...length,
    ...maybe,
    id: 'gate-shut-clearance',
    owner: 'gate',
    key: 'shutClearance',
    words: 'Clearance shut',
    name: 'clearance when shut',
    describe: 'Least clearance under the shut leaf'
  },
  {
    ...length,
    ...maybe,
    id: 'gate-laid-clearance',
    owner: 'gate',
    key: 'laidClearance',
    words: 'Clearance while units stand proud',
    name: 'clearance while units stand proud',
    describe: 'Least clearance before the units are vibrated down'
  },
  {
    ...read,
    ...maybe,
    id: 'gate-wanted',
    owner: 'gate',
    key: 'wanted',
    words: 'Clearance wanted',
    name: 'clearance wanted',
    describe: 'Clearance that the job asks for'
  },
  {
    ...length,
    ...maybe,
    id: 'gate-trim',
    owner: 'gate',
    key: 'trim',
    words: 'Trim the leaf by',
    name: 'trim',
    describe:
      'What is cut off the leaf so that it clears as wanted, or how far the finish would have to lie lower; nought where it clears'
  },
  {
    kind: 'angle',
    measure: 'degrees',
    print: 'angle',
    computed: false,
    ...maybe,
    id: 'gate-strikes-at',
    owner: 'gate',
    key: 'strikesAt',
    words: 'Strikes at',
    name: 'opening at which it strikes',
    describe: 'Least opening at which the leaf strikes the finish'
  },
  {
    ...length,
    ...maybe,
    id: 'gate-sill-step',
    owner: 'gate',
    key: 'sillStep',
    words: 'Step at the sill',
    name: 'step at the sill',
    describe:
      'From the highest finish along the opening up to the sill; less than nought: the finish lies above the sill'
  },
  {
    ...level,
    ...maybe,
    id: 'pipe-top',
    owner: 'pipe',
    key: 'top',
    words: 'Pipe',
    name: 'height of the pipe',
    describe: 'Height of the pipe by its stated depth, where the dig comes nearest to it'
  },
  {
    ...length,
    ...maybe,
    id: 'pipe-below-dig',
    owner: 'pipe',
    key: 'belowDig',
    words: 'Below the dig',
    name: 'pipe below the bottom of the dig',
    describe:
      'Least distance from the bottom of the dig down to the pipe, by its stated depth; less than nought: within the dig'
  },
  {
    ...length,
    ...maybe,
    id: 'pipe-below-dig-but-for-soft-spots',
    owner: 'pipe',
    key: 'belowDigBesideSoftSpots',
    words: 'Below the dig but for soft spots',
    name: 'pipe below the dig but for soft spots',
    describe: 'The same without soft spots'
  },
  {
    kind: 'area',
    measure: 'm2',
    print: 'area',
    computed: true,
    ...always,
    id: 'drain-drained',
    owner: 'drain',
    key: 'drained',
    words: 'Takes water of',
    name: 'area drained',
    describe: 'Area of paving whose water runs to the drain; the drain is not sized'
  },
  {
    ...level,
    ...maybe,
    id: 'drain-grate',
    owner: 'drain',
    key: 'grate',
    words: 'Grate',
    name: 'grate',
    describe: 'Lowest height of the grate'
  },
  {
    ...length,
    ...maybe,
    id: 'drain-finish-above',
    owner: 'drain',
    key: 'finishAbove',
    words: 'Finish above the grate',
    name: 'finish above the grate',
    describe: 'Least height of the finish above the grate along it; less than nought: the grate stands above the finish'
  },
  {
    ...run,
    ...always,
    id: 'route-length',
    owner: 'route',
    key: 'length',
    words: 'Length',
    name: 'length',
    describe: 'Length of the line that lies on paving of the job'
  },
  {
    ...slope,
    ...always,
    id: 'route-running',
    owner: 'route',
    key: 'running',
    words: 'Steepest running slope',
    name: 'running slope',
    describe: 'Steepest slope along the line'
  },
  {
    ...slope,
    ...always,
    id: 'route-cross',
    owner: 'route',
    key: 'cross',
    words: 'Steepest cross slope',
    name: 'cross slope',
    describe: 'Steepest slope across the line'
  },
  {
    ...run,
    ...maybe,
    id: 'route-clear-width',
    owner: 'route',
    key: 'clearWidth',
    words: 'Least clear width',
    name: 'clear width',
    describe: 'Least width square to the line between the edges of the paving and what is kept out of it'
  },
  {
    ...read,
    ...maybe,
    id: 'route-lip',
    owner: 'route',
    key: 'lip',
    words: 'Highest lip',
    name: 'lip',
    describe: 'Highest step from paving to paving along the line, up or down'
  },
  {
    ...run,
    ...maybe,
    id: 'route-off-paving',
    owner: 'route',
    key: 'offPaving',
    words: 'Not on paving',
    name: 'length off the paving',
    describe: 'Length of the line that lies on no area of the job'
  },
  {
    ...run,
    ...always,
    id: 'stretch-from',
    owner: 'stretch',
    key: 'from',
    words: 'From',
    name: 'start',
    describe: 'Distance along the line at which it begins'
  },
  {
    ...run,
    ...always,
    id: 'stretch-length',
    owner: 'stretch',
    key: 'length',
    words: 'Length',
    name: 'length',
    describe: 'Length of the stretch'
  },
  {
    ...slope,
    ...always,
    id: 'stretch-slope',
    owner: 'stretch',
    key: 'slope',
    words: 'Slope',
    name: 'slope',
    describe: 'Slope along the line; more than nought: it rises'
  },
  {
    ...slope,
    ...always,
    id: 'stretch-cross',
    owner: 'stretch',
    key: 'cross',
    words: 'Cross slope',
    name: 'cross slope',
    describe: 'Steepest slope across the line in the stretch'
  },
  {
    ...delivery,
    ...always,
    id: 'delivery-delivered',
    key: 'delivered',
    words: 'Delivered',
    name: 'delivered',
    describe: 'Delivered so far, in the measure told'
  },
  {
    ...delivery,
    ...maybe,
    id: 'delivery-needed',
    key: 'needed',
    words: 'Needed',
    name: 'needed',
    describe:
      'Needed for the job: of a material with what it says of loss, moisture and settling; of units those used, before breakage'
  },
  {
    ...delivery,
    ...maybe,
    id: 'delivery-short',
    key: 'short',
    words: 'Still to come',
    name: 'still to come',
    describe: 'Needed less delivered; less than nought: delivered over'
  },
  {
    ...level,
    ...always,
    id: 'reading-measured',
    owner: 'reading',
    key: 'measured',
    words: 'Measured',
    name: 'measured height',
    describe: 'Height as measured'
  },
  {
    ...level,
    ...always,
    id: 'reading-design',
    owner: 'reading',
    key: 'design',
    words: 'Design',
    name: 'design height',
    describe: 'Height by the design'
  },
  {
    ...length,
    ...always,
    id: 'reading-above',
    owner: 'reading',
    key: 'above',
    words: 'Above the design',
    name: 'measured above the design',
    describe: 'Measured less design: more than nought is high'
  },
  {
    ...read,
    ...always,
    id: 'gap-gap',
    owner: 'gap',
    key: 'gap',
    words: 'Gap',
    name: 'gap',
    describe: 'Gap under the straightedge as measured'
  },
  {
    ...run,
    ...always,
    id: 'gap-straightedge',
    owner: 'gap',
    key: 'straightedge',
    words: 'Straightedge',
    name: 'straightedge',
    describe: 'Length of the straightedge'
  },
  {
    ...slope,
    ...always,
    id: 'slope-measured',
    owner: 'slope',
    key: 'measured',
    words: 'Measured',
    name: 'measured slope',
    describe: 'Slope along the line as measured'
  },
  {
    ...slope,
    ...maybe,
    id: 'slope-design',
    owner: 'slope',
    key: 'design',
    words: 'Design',
    name: 'design slope',
    describe: 'Slope of the finish along the line by the design, from end to end'
  }
] as const satisfies readonly Quantity[];
