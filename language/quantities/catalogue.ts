import type { PrintStyle } from '../measures/print.ts';
import { BUYING_QUANTITIES } from './catalogue-buying.ts';
import { CARTING_QUANTITIES } from './catalogue-carting.ts';
import { AREA_HEIGHTS } from './catalogue-heights.ts';
import { SITE_QUANTITIES } from './catalogue-site.ts';

/** What a quantity belongs to; each owner is one kind of object of the JSON contract. */
export type Owner =
  | 'area'
  | 'kept-out'
  | 'edge'
  | 'finish'
  | 'dig'
  | 'soft-spot'
  | 'level'
  | 'tape'
  | 'measured-height'
  | 'box'
  | 'gate'
  | 'pipe'
  | 'drain'
  | 'route'
  | 'stretch'
  | 'delivery'
  | 'reading'
  | 'gap'
  | 'slope'
  | 'layer'
  | 'laying'
  | 'running-size'
  | 'border-row'
  | 'joints'
  | 'edging'
  | 'geotextile'
  | 'job-dig'
  | 'totals'
  | 'job-material'
  | 'job-unit'
  | 'job-edging'
  | 'need'
  | 'order'
  | 'choice'
  | 'delivery-charge';

export type Kind = 'area' | 'length' | 'volume' | 'mass' | 'count' | 'share' | 'angle' | 'number';

export interface Quantity {
  readonly id: string;
  readonly owner: Owner;
  /** Key in the JSON contract. */
  readonly key: string;
  readonly kind: Kind;
  /** SI measure in the JSON; empty for a count or share. */
  readonly measure: string;
  /** Head of a row or column. */
  readonly words: string;
  /** Head of a column where these would make it too wide. */
  readonly head?: string;
  /** Name in a formula. */
  readonly name: string;
  readonly print: PrintStyle;
  /** How it prints for a bed, where that differs: sand is bought by the cubic foot. */
  readonly printBed?: PrintStyle;
  /** Worked out, with a working; else repeated as the job gives it. */
  readonly computed: boolean;
  /** There whenever its owner is. */
  readonly always: boolean;
  readonly describe: string;
  /** A count of work done, for tests and the JSON: no table shows it. */
  readonly workOnly?: true;
  /** It stands on the level sheet, not in the tables of quantities. */
  readonly sheetOnly?: true;
}

const QUANTITIES = [
  {
    id: 'finish-height',
    owner: 'finish',
    key: 'height',
    kind: 'length',
    measure: 'm',
    words: 'Height of the finish',
    name: 'height of the finish',
    print: 'thickness',
    computed: false,
    always: true,
    describe: 'Height of the finish above the benchmark'
  },
  {
    id: 'gross-area',
    owner: 'area',
    key: 'grossArea',
    kind: 'area',
    measure: 'm2',
    words: 'Gross area',
    name: 'gross area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Area within the outline, kept-out shapes included'
  },
  {
    id: 'net-area',
    owner: 'area',
    key: 'netArea',
    kind: 'area',
    measure: 'm2',
    words: 'Net area',
    name: 'net area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Area within the outline less the kept-out shapes'
  },
  {
    id: 'perimeter',
    owner: 'area',
    key: 'perimeter',
    kind: 'length',
    measure: 'm',
    words: 'Perimeter',
    name: 'perimeter',
    print: 'length',
    computed: true,
    always: true,
    describe: 'Length round the outline along the face of the units'
  },
  {
    id: 'kept-out-area',
    owner: 'kept-out',
    key: 'area',
    kind: 'area',
    measure: 'm2',
    words: 'Kept-out area',
    name: 'kept-out area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Area of a box or pit, kept out of units, joints, bed, base, geotextile and dig'
  },
  {
    id: 'edge-length',
    owner: 'edge',
    key: 'length',
    kind: 'length',
    measure: 'm',
    words: 'Length',
    name: 'length of the side',
    print: 'length',
    computed: true,
    always: true,
    describe: 'Length of one side along the face of the units'
  },
  {
    id: 'overhang',
    owner: 'edge',
    key: 'overhang',
    kind: 'length',
    measure: 'm',
    words: 'Base past the units',
    name: 'base past the units',
    print: 'thickness',
    computed: true,
    always: true,
    describe: 'How far the base runs past the face of the units at this side'
  },
  {
    id: 'dig-area',
    owner: 'dig',
    key: 'area',
    kind: 'area',
    measure: 'm2',
    words: 'Dig area',
    name: 'dig area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Area dug: out to the edge of the base, less the kept-out shapes'
  },
  {
    id: 'dig-bank-volume',
    owner: 'dig',
    key: 'bankVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Dig in the ground',
    name: 'bank volume',
    print: 'stone-volume',
    computed: true,
    always: true,
    describe: 'Volume dug, as it lies in the ground'
  },
  {
    id: 'dig-loose-volume',
    owner: 'dig',
    key: 'looseVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Dig loose',
    name: 'loose volume',
    print: 'stone-volume',
    computed: true,
    always: true,
    describe: 'Volume dug, loose as it is carted'
  },
  {
    id: 'dig-mass',
    owner: 'dig',
    key: 'mass',
    kind: 'mass',
    measure: 'kg',
    words: 'Dig mass',
    name: 'mass of the dig',
    print: 'mass',
    computed: true,
    always: true,
    describe: 'Mass dug'
  },
  {
    id: 'dig-deepest',
    owner: 'dig',
    key: 'deepest',
    kind: 'length',
    measure: 'm',
    words: 'Deepest dig',
    name: 'depth',
    print: 'thickness',
    computed: true,
    always: true,
    describe: 'Greatest depth of the dig below the ground'
  },
  {
    id: 'dig-shallowest',
    owner: 'dig',
    key: 'shallowest',
    kind: 'length',
    measure: 'm',
    words: 'Shallowest dig',
    name: 'least depth',
    print: 'thickness',
    computed: true,
    always: true,
    describe: 'Least depth of the dig below the ground'
  },
  {
    id: 'layer-thickness',
    owner: 'layer',
    key: 'thickness',
    kind: 'length',
    measure: 'm',
    words: 'Thickness',
    name: 'thickness',
    print: 'thickness',
    computed: false,
    always: true,
    describe: 'Thickness of the finished layer, as given'
  },
  {
    id: 'layer-area',
    owner: 'layer',
    key: 'area',
    kind: 'area',
    measure: 'm2',
    words: 'Layer area',
    name: 'layer area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Area of the layer: the bed under the units, base and sub-base out to the edge of the base'
  },
  {
    id: 'layer-compacted-volume',
    owner: 'layer',
    key: 'compactedVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Compacted volume',
    name: 'compacted volume',
    print: 'stone-volume',
    printBed: 'sand-volume',
    computed: true,
    always: true,
    describe: 'Volume of the finished layer'
  },
  {
    id: 'layer-loose-volume',
    owner: 'layer',
    key: 'looseVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Loose volume',
    name: 'loose volume',
    print: 'stone-volume',
    printBed: 'sand-volume',
    computed: true,
    always: false,
    describe: 'Volume of the same material as tipped; absent where its densities are not known'
  },
  {
    id: 'layer-mass',
    owner: 'layer',
    key: 'mass',
    kind: 'mass',
    measure: 'kg',
    words: 'Mass',
    name: 'mass of the layer',
    print: 'mass',
    computed: true,
    always: false,
    describe: 'Mass of the layer; absent where its density is not known'
  },
  {
    id: 'units-whole',
    owner: 'laying',
    key: 'whole',
    kind: 'count',
    measure: '',
    words: 'Whole units',
    head: 'Whole',
    name: 'whole units',
    print: 'count',
    computed: true,
    always: true,
    describe: 'Units laid whole'
  },
  {
    id: 'units-cut',
    owner: 'laying',
    key: 'cut',
    kind: 'count',
    measure: '',
    words: 'Cut units',
    head: 'Cut',
    name: 'cut units',
    print: 'count',
    computed: true,
    always: true,
    describe: 'Units cut to fit where they lie; one may leave several pieces'
  },
  {
    id: 'units-used',
    owner: 'laying',
    key: 'unitsUsed',
    kind: 'count',
    measure: '',
    words: 'Units used',
    head: 'Used',
    name: 'units used',
    print: 'count',
    computed: true,
    always: false,
    describe: 'Units that whole ones and cut pieces take, several pieces out of one unit where they fit'
  },
  {
    id: 'units-least',
    owner: 'laying',
    key: 'lowerBound',
    kind: 'count',
    measure: '',
    words: 'At least',
    name: 'least units',
    print: 'count',
    computed: true,
    always: false,
    describe: 'Least number of units: no way of cutting takes fewer'
  },
  {
    id: 'breakage',
    owner: 'laying',
    key: 'breakage',
    kind: 'count',
    measure: '',
    words: 'For breakage',
    head: 'Breakage',
    name: 'units for breakage',
    print: 'count',
    computed: true,
    always: false,
    describe: 'Units bought besides, for those that break'
  },
  {
    id: 'units-to-buy',
    owner: 'laying',
    key: 'toBuy',
    kind: 'count',
    measure: '',
    words: 'To buy',
    name: 'units to buy',
    print: 'count',
    computed: true,
    always: false,
    describe: 'Units used and those for breakage'
  },
  {
    id: 'smallest-piece',
    owner: 'laying',
    key: 'smallestPiece',
    kind: 'area',
    measure: 'm2',
    words: 'Smallest piece',
    name: 'smallest piece',
    print: 'piece',
    computed: true,
    always: false,
    describe: 'Area of the smallest piece that is laid'
  },
  {
    id: 'smallest-share',
    owner: 'laying',
    key: 'smallestShare',
    kind: 'share',
    measure: '',
    words: 'Of a unit',
    name: 'share of a unit',
    print: 'share',
    computed: true,
    always: false,
    describe: 'The smallest piece as a share of a whole unit'
  },
  {
    id: 'narrowest-piece',
    owner: 'laying',
    key: 'narrowestPiece',
    kind: 'length',
    measure: 'm',
    words: 'Narrowest piece',
    name: 'narrowest piece',
    print: 'thickness',
    computed: true,
    always: false,
    describe: 'Width of the narrowest piece across its narrowest direction'
  },
  {
    id: 'straight-cuts',
    owner: 'laying',
    key: 'straightCuts',
    kind: 'count',
    measure: '',
    words: 'Straight cuts',
    name: 'straight cuts',
    print: 'count',
    computed: true,
    always: false,
    describe:
      'Straight cuts from edge to edge in units that need no others: a splitter can make them where the pieces are wide enough'
  },
  {
    id: 'saw-length',
    owner: 'laying',
    key: 'sawLength',
    kind: 'length',
    measure: 'm',
    words: 'Saw length',
    name: 'saw length',
    print: 'length',
    computed: true,
    always: false,
    describe: 'Length of all cuts, straight ones among them'
  },
  {
    id: 'unit-area',
    owner: 'laying',
    key: 'unitArea',
    kind: 'area',
    measure: 'm2',
    words: 'Area of units and pieces',
    head: 'Area',
    name: 'area of units and pieces',
    print: 'area',
    computed: true,
    always: true,
    describe: 'True area of all whole units and cut pieces'
  },
  {
    id: 'units-clipped',
    owner: 'laying',
    key: 'clipped',
    kind: 'count',
    measure: '',
    words: 'Units measured at the edge',
    name: 'units measured at the edge',
    print: 'count',
    computed: true,
    always: false,
    describe: 'Units that were measured against an edge: a count of the work done, not of material',
    workOnly: true
  },
  {
    id: 'running-courses',
    owner: 'running-size',
    key: 'courses',
    kind: 'count',
    measure: '',
    words: 'Courses',
    head: 'Courses or units',
    name: 'courses',
    print: 'count',
    computed: false,
    always: true,
    describe: 'Courses, or units along a course, from the first'
  },
  {
    id: 'running-across',
    owner: 'running-size',
    key: 'across',
    kind: 'length',
    measure: 'm',
    words: 'Across the courses',
    name: 'size across the courses',
    print: 'length',
    computed: true,
    always: false,
    describe: 'From the near face of the first course to the far face of this one'
  },
  {
    id: 'running-along-side',
    owner: 'running-size',
    key: 'alongSide',
    kind: 'length',
    measure: 'm',
    words: 'Along the side',
    name: 'distance along the side',
    print: 'length',
    computed: true,
    always: false,
    describe: 'The same, measured along the side that courses lying aslant begin at'
  },
  {
    id: 'running-along',
    owner: 'running-size',
    key: 'along',
    kind: 'length',
    measure: 'm',
    words: 'Along the courses',
    name: 'size along the courses',
    print: 'length',
    computed: true,
    always: false,
    describe: 'From the near face of the first unit of a course to the far face of this one'
  },
  {
    id: 'row-length',
    owner: 'border-row',
    key: 'length',
    kind: 'length',
    measure: 'm',
    words: 'Length',
    name: 'length of the row',
    print: 'length',
    computed: true,
    always: false,
    describe: 'Length of a straight row of a border or band'
  },
  {
    id: 'row-units',
    owner: 'border-row',
    key: 'units',
    kind: 'count',
    measure: '',
    words: 'Units',
    name: 'units in the row',
    print: 'count',
    computed: true,
    always: true,
    describe: 'Units in the row, whole and cut, as if nothing were kept out'
  },
  {
    id: 'row-joint',
    owner: 'border-row',
    key: 'joint',
    kind: 'length',
    measure: 'm',
    words: 'Joint',
    name: 'joint',
    print: 'joint',
    computed: true,
    always: true,
    describe: 'Width of the joints between the units of the row: adjusted within its limits where whole units fit so'
  },
  {
    id: 'row-opening',
    owner: 'border-row',
    key: 'opening',
    kind: 'length',
    measure: 'm',
    words: 'Widest joint',
    name: 'widest joint',
    print: 'joint',
    computed: true,
    always: false,
    describe: 'On a curve, where the units are furthest apart'
  },
  {
    id: 'joint-length',
    owner: 'joints',
    key: 'length',
    kind: 'length',
    measure: 'm',
    words: 'Joint length',
    name: 'joint length',
    print: 'run',
    computed: true,
    always: false,
    describe: 'Length of all joints between units'
  },
  {
    id: 'joint-volume',
    owner: 'joints',
    key: 'volume',
    kind: 'volume',
    measure: 'm3',
    words: 'Joint volume',
    name: 'joint volume',
    print: 'sand-volume',
    computed: true,
    always: true,
    describe: 'Volume of the joints to the full thickness of the units'
  },
  {
    id: 'joint-mass',
    owner: 'joints',
    key: 'mass',
    kind: 'mass',
    measure: 'kg',
    words: 'Joint filler',
    name: 'mass of joint filler',
    print: 'sand-mass',
    computed: true,
    always: false,
    describe: 'Mass of joint filler; absent where none is named or its loose density is not known'
  },
  {
    id: 'edging-length',
    owner: 'edging',
    key: 'length',
    kind: 'length',
    measure: 'm',
    words: 'Edging length',
    name: 'edging length',
    print: 'length',
    computed: true,
    always: true,
    describe: 'Length of this edging along the face of the units'
  },
  {
    id: 'edging-spikes',
    owner: 'edging',
    key: 'spikes',
    kind: 'count',
    measure: '',
    words: 'Spikes',
    name: 'spikes',
    print: 'count',
    computed: true,
    always: false,
    describe: 'Spikes: one at the beginning of each run and one at the end of each spacing'
  },
  {
    id: 'edging-concrete',
    owner: 'edging',
    key: 'concreteVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Concrete for edging',
    name: 'concrete volume',
    print: 'stone-volume',
    computed: true,
    always: false,
    describe: 'Concrete below and behind the edging'
  },
  {
    id: 'geotextile-area',
    owner: 'geotextile',
    key: 'area',
    kind: 'area',
    measure: 'm2',
    words: 'Geotextile',
    name: 'geotextile area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Geotextile on the bottom of the dig, laps included where roll width and lap are known'
  },
  {
    id: 'job-dig-area',
    owner: 'job-dig',
    key: 'area',
    kind: 'area',
    measure: 'm2',
    words: 'Dig area',
    name: 'dig area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Area dug in the whole job, ground shared by two areas counted once'
  },
  {
    id: 'job-dig-bank-volume',
    owner: 'job-dig',
    key: 'bankVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Dig in the ground',
    name: 'bank volume',
    print: 'stone-volume',
    computed: true,
    always: true,
    describe: 'Volume dug in the whole job, as it lies in the ground'
  },
  {
    id: 'job-dig-loose-volume',
    owner: 'job-dig',
    key: 'looseVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Dig loose',
    name: 'loose volume',
    print: 'stone-volume',
    computed: true,
    always: true,
    describe: 'Volume dug in the whole job, loose as it is carted'
  },
  {
    id: 'job-dig-mass',
    owner: 'job-dig',
    key: 'mass',
    kind: 'mass',
    measure: 'kg',
    words: 'Dig mass',
    name: 'mass of the dig',
    print: 'mass',
    computed: true,
    always: true,
    describe: 'Mass dug in the whole job'
  },
  {
    id: 'total-net-area',
    owner: 'totals',
    key: 'netArea',
    kind: 'area',
    measure: 'm2',
    words: 'Net area',
    name: 'net area',
    print: 'area',
    computed: true,
    always: true,
    describe: 'Net area of all areas, a place paved twice counted once'
  },
  {
    id: 'job-compacted-volume',
    owner: 'job-material',
    key: 'compactedVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Compacted volume',
    name: 'compacted volume',
    print: 'stone-volume',
    printBed: 'sand-volume',
    computed: false,
    always: true,
    describe: 'Volume of the finished layers of one material in all areas'
  },
  {
    id: 'job-loose-volume',
    owner: 'job-material',
    key: 'looseVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Loose volume',
    name: 'loose volume',
    print: 'stone-volume',
    printBed: 'sand-volume',
    computed: false,
    always: false,
    describe: 'Volume of the same material as tipped'
  },
  {
    id: 'job-material-mass',
    owner: 'job-material',
    key: 'mass',
    kind: 'mass',
    measure: 'kg',
    words: 'Mass',
    name: 'mass',
    print: 'mass',
    computed: false,
    always: false,
    describe: 'Mass of the same material'
  },
  {
    id: 'job-units-whole',
    owner: 'job-unit',
    key: 'whole',
    kind: 'count',
    measure: '',
    words: 'Whole units',
    head: 'Whole',
    name: 'whole units',
    print: 'count',
    computed: false,
    always: true,
    describe: 'Units of one kind laid whole in all areas'
  },
  {
    id: 'job-units-cut',
    owner: 'job-unit',
    key: 'cut',
    kind: 'count',
    measure: '',
    words: 'Cut units',
    head: 'Cut',
    name: 'cut units',
    print: 'count',
    computed: false,
    always: true,
    describe: 'Units of one kind cut in all areas'
  },
  {
    id: 'job-units-used',
    owner: 'job-unit',
    key: 'unitsUsed',
    kind: 'count',
    measure: '',
    words: 'Units used',
    head: 'Used',
    name: 'units used',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Units of one kind used in all areas'
  },
  {
    id: 'job-units-least',
    owner: 'job-unit',
    key: 'lowerBound',
    kind: 'count',
    measure: '',
    words: 'At least',
    name: 'least units',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Least number of units in all areas: no way of cutting takes fewer'
  },
  {
    id: 'job-breakage',
    owner: 'job-unit',
    key: 'breakage',
    kind: 'count',
    measure: '',
    words: 'For breakage',
    head: 'Breakage',
    name: 'units for breakage',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Units bought besides, for those that break'
  },
  {
    id: 'job-kept',
    owner: 'job-unit',
    key: 'keep',
    kind: 'count',
    measure: '',
    words: 'Put by',
    name: 'units put by',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Units put by for repairs'
  },
  {
    id: 'job-trays',
    owner: 'job-unit',
    key: 'trays',
    kind: 'count',
    measure: '',
    words: 'In trays',
    name: 'units in trays',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Units that the trays of covers are paved with'
  },
  {
    id: 'job-units-to-buy',
    owner: 'job-unit',
    key: 'toBuy',
    kind: 'count',
    measure: '',
    words: 'To buy',
    name: 'units to buy',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Units used, for breakage, put by and in trays of covers'
  },
  {
    id: 'job-saw-length',
    owner: 'job-unit',
    key: 'sawLength',
    kind: 'length',
    measure: 'm',
    words: 'Saw length',
    name: 'saw length',
    print: 'length',
    computed: false,
    always: false,
    describe: 'Length of all cuts of one kind of unit'
  },
  {
    id: 'job-edging-length',
    owner: 'job-edging',
    key: 'length',
    kind: 'length',
    measure: 'm',
    words: 'Edging length',
    name: 'edging length',
    print: 'length',
    computed: false,
    always: true,
    describe: 'Length of one edging in all areas'
  },
  {
    id: 'job-spikes',
    owner: 'job-edging',
    key: 'spikes',
    kind: 'count',
    measure: '',
    words: 'Spikes',
    name: 'spikes',
    print: 'count',
    computed: false,
    always: false,
    describe: 'Spikes of one edging in all areas'
  },
  {
    id: 'job-edging-concrete',
    owner: 'job-edging',
    key: 'concreteVolume',
    kind: 'volume',
    measure: 'm3',
    words: 'Concrete for edging',
    name: 'concrete',
    print: 'stone-volume',
    computed: false,
    always: false,
    describe: 'Concrete below and behind one edging in all areas'
  }
] as const satisfies readonly Quantity[];

/** Every quantity, once: JSON keys and schema, hover rows, table heads and comparison derive from here. */
export const CATALOGUE = [
  ...QUANTITIES,
  ...AREA_HEIGHTS,
  ...CARTING_QUANTITIES,
  ...SITE_QUANTITIES,
  ...BUYING_QUANTITIES
] as const;

type Entry = (typeof CATALOGUE)[number];
type Of<O extends Owner> = Extract<Entry, { readonly owner: O }>;

/** JSON keys of an owner's quantities. */
export type KeyOf<O extends Owner> = Of<O>['key'];

/** An owner's numbers as they stand in the JSON: those that may be missing are optional. */
export type NumbersOf<O extends Owner> = {
  readonly [E in Extract<Of<O>, { readonly always: true }> as E['key']]: number;
} & { readonly [E in Extract<Of<O>, { readonly always: false }> as E['key']]?: number };

const byOwnerAndKey: ReadonlyMap<string, Quantity> = new Map(
  CATALOGUE.map((entry): [string, Quantity] => [`${entry.owner} ${entry.key}`, entry])
);

/** An owner's quantity by its JSON key. */
export function quantityOf<O extends Owner>(owner: O, key: KeyOf<O>): Quantity {
  return byOwnerAndKey.get(`${owner} ${key}`)!;
}

/** All quantities of an owner, in the order of the JSON. */
export function quantitiesOf(owner: Owner): readonly Quantity[] {
  return CATALOGUE.filter(entry => entry.owner === owner);
}

/** Those that tables show, in their order. */
export function shownQuantitiesOf(owner: Owner): readonly Quantity[] {
  return quantitiesOf(owner).filter(({ workOnly, sheetOnly }) => workOnly === undefined && sheetOnly === undefined);
}
