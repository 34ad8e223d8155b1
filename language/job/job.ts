import type { Loop, Point } from '../geometry/shapes.ts';
import type { Cell } from '../laying/bonds/cell-bond.ts';
import type {
  BoxUse,
  Datum,
  Drain,
  Finish,
  Gate,
  LevelSheetWords,
  NamedLine,
  Pipe,
  Route,
  SetUp,
  SiteHeights,
  SpotLevel,
  WallHeights
} from './heights.ts';
import type { LogEntry, SoftSpot } from './log.ts';
import type { MoneyWords } from './money-lines.ts';
import type { Allowances, PriceList, Stock, Supplier } from './prices.ts';
import type { Accept, Rule, Rulebook } from './rule.ts';
import type { WorkWords } from './work.ts';

/**
 * The job as lowered from the text: plain, frozen, without positions. A thing is known by its key
 * (`area:terrace/base`); a separate map leads from key to place, so moved or reformatted text changes nothing here.
 */
export interface Job {
  readonly key: Key;
  readonly title: string;
  readonly currency?: string;
  readonly system: System;
  readonly rulebooks: readonly Rulebook[];
  /** All that the rulebooks lead to, and the job's own. */
  readonly rules: readonly Rule[];
  /** Findings of rules that are set aside. */
  readonly accepts: readonly Accept[];
  /** The material that a base is usually made of where the job is. */
  readonly usualStone: string;
  /** How paving usually falls where the job is, as one writes it. */
  readonly usualFall: string;
  readonly buying: Buying;
  readonly suppliers: readonly Supplier[];
  /** Of things that the job's texts declare or that ship, and of mixed packs of them. */
  readonly prices: readonly PriceList[];
  readonly stock: readonly Stock[];
  /** What concrete is bought as: the job's own material of that role, else the shipped one. */
  readonly concrete: Material;
  readonly points: readonly NamedPoint[];
  readonly areas: readonly Area[];
  readonly boxes: readonly KeptOut[];
  /** Between points, where points were found by tape. */
  readonly tapes: readonly Tape[];
  readonly datum?: Datum;
  readonly setUps: readonly SetUp[];
  readonly lines: readonly NamedLine[];
  readonly sections: readonly NamedLine[];
  readonly drains: readonly Drain[];
  readonly pipes: readonly Pipe[];
  readonly gates: readonly Gate[];
  readonly routes: readonly Route[];
  readonly levelSheet: LevelSheetWords;
  readonly log: readonly LogEntry[];
  readonly carting: Carting;
  readonly money: MoneyWords;
  readonly work: WorkWords;
  /** Printed as they are. */
  readonly notes: readonly string[];
  /** Keys of areas whose text, or a thing their numbers are taken from, is broken: they have no numbers. */
  readonly missing: readonly Missing[];
}

/** How the units that are laid become units to buy. */
export interface Buying {
  /** Share of the units used that is bought besides, for those that break. */
  readonly breakage?: Given;
  /** Units put by for repairs, by the key of the unit. */
  readonly keep: readonly { readonly unit: Key; readonly count: Given }[];
  /** Width of the saw's cut, m. */
  readonly sawCut: Given;
  /** An offcut is used in its own area alone; else anywhere in the job. */
  readonly offcutsStay: boolean;
}

/** How what is dug is carried away. */
export interface Carting {
  readonly digBy?: 'hand' | 'machine';
  /** Mass of the digger, kg. */
  readonly machine?: Given;
  /** Width of the way in, m. */
  readonly width?: Given;
  /** Length of the barrow run, one way, m. */
  readonly run?: Given;
  /** What a barrow holds, m3. */
  readonly barrow: Given;
  /** What a truck takes, kg. */
  readonly truck?: Given;
}

/** A distance read on a tape and what it comes to when all tapes are fitted together, m. */
export interface Tape {
  readonly key: Key;
  /** Names of the points. */
  readonly from: string;
  readonly to: string;
  readonly read: Given;
  readonly fitted: number;
  /** Fitted less read. */
  readonly misfit: number;
  /** What it would have to read by all the others, where they tell. */
  readonly byTheOthers?: number;
  /** No tape misfits more: several where none can be convicted alone. */
  readonly worst: boolean;
}

/** A point of the plan, m. */
export interface NamedPoint {
  readonly key: Key;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** Its coordinates are given; else it was found from others. */
  readonly fixed: boolean;
}

export type Key = string;
export type System = 'imperial' | 'metric';
/** Where what is left out of a job is known: the shipped rulebooks. */
export type Country = 'north-america' | 'britain' | 'ireland' | 'continental-europe';

/** Something without numbers, and the place that broke it: `because` is the key, file or thing whose text is broken. */
export interface Missing {
  readonly key: Key;
  readonly name: string;
  readonly because: string;
}

/** A quantity read from the text, in SI (m, m2, m3, kg, kg/m3, degrees, ratios for slopes and shares). */
export interface Given {
  readonly value: number;
  /** Where it stands; absent when it is assumed. */
  readonly key?: Key;
  /** As written, such as `6 1/2 in`; for an assumed value as it stands in the shipped text. */
  readonly written: string;
  readonly assumed?: Assumed;
}

/** Why a value that the job leaves out is taken as it is. */
export interface Assumed {
  readonly because: string;
  readonly source?: string;
}

export interface Site {
  readonly soil: Soil;
  readonly drains: 'well' | 'poorly';
  /** California bearing ratio as a share (3 % is 0.03), where it was measured. */
  readonly bearing?: Given;
  readonly winters?: 'freeze' | 'mild';
  /** Thickness of the topsoil, m. */
  readonly topsoil?: Given;
  /** Height of today's ground against the benchmark. */
  readonly ground?: Height;
  /** The first benchmark that the site names. */
  readonly benchmark?: string;
  readonly datum?: Datum;
  /** Heights taken at points. */
  readonly heights?: SiteHeights;
  /** The topsoil is kept on the site. */
  readonly topsoilKept?: true;
  /** Answers what the rules ask about leave to build. */
  readonly planning?: string;
}

export interface Soil {
  readonly name: string;
  /** Set when the job names no soil. */
  readonly assumed?: Assumed;
  /** Growth of dug soil, share (43 % is 0.43). */
  readonly swell: Given;
  /** Mass of a cubic metre in the ground, kg/m3. */
  readonly density: Given;
  readonly heavesInFrost: boolean;
}

/** A height in m, against the benchmark named. */
export interface Height {
  readonly benchmark: string;
  /** Above the benchmark, below it negative; or above nought, where the text gives a height and no benchmark. */
  readonly above: Given;
  readonly fromNought: boolean;
  /** The benchmark's own height above nought, where it has one. */
  readonly base?: Given;
}

export type Traffic = 'foot' | 'cars' | 'trucks' | 'turning';

/** Everything the numbers of one area are taken from, by content: two areas that are alike give alike numbers. */
export interface Area {
  readonly key: Key;
  readonly name: string;
  readonly outline: Loop;
  /** One for each side of the outline, in its order. */
  readonly edges: readonly Edge[];
  readonly keptOut: readonly KeptOut[];
  readonly traffic: readonly Traffic[];
  readonly site: Site;
  readonly finish?: Finish;
  readonly paving?: Paving;
  /** The area that says of the paving what this one says is `as` there. */
  readonly pavingAs?: Key;
  readonly jointFiller?: Material;
  /** From the top down: bed, base, sub-base. */
  readonly layers: readonly Layer[];
  readonly geotextile?: Material;
  readonly start: Start;
  /** The shortest piece that a course may end in: else the unit before it is cut as well, m. */
  readonly inboardCuts?: Given;
  /** The outermost first. */
  readonly borders: readonly Border[];
  readonly bands: readonly Band[];
  /** Shapes within that are paved in another way. */
  readonly insets: readonly Inset[];
  /** Channels along its sides, and what takes its width from it. */
  readonly drains: readonly Drain[];
  readonly softSpots: readonly (SoftSpot & { readonly key: Key })[];
  /** Old paving in it that is broken out. */
  readonly brokenOut: readonly BrokenOut[];
}

/** Paving that is there and is taken up with what it lies on, m and kg/m3. */
export interface BrokenOut {
  readonly key: Key;
  readonly name: string;
  readonly outline: Loop;
  readonly thickness: Given;
  readonly density: Given;
}

export interface Paving {
  readonly key: Key;
  /** The one unit, or all sizes of a bond of several. */
  readonly units: readonly [Unit, ...Unit[]];
  readonly bond: Bond;
  readonly joint: Joint;
}

/** Width of the joints, m, and the limits within which it may be adjusted so that whole units fit. */
export interface Joint {
  readonly width: Given;
  readonly least: Given;
  readonly most: Given;
}

export type Bond = {
  readonly key: Key;
  readonly name: string;
  /** Degrees from the direction that the courses would run in. */
  readonly turned?: Given;
} & BondWay;

export type BondWay =
  /** `offset` is the share of a unit's length by which each next course is shifted. */
  | { readonly way: 'courses'; readonly offset: Given }
  | { readonly way: 'cell'; readonly cell: Cell }
  /** Cross joints of neighbouring courses lie at least `jointsApart` from each other, m. */
  | { readonly way: 'random-courses'; readonly seed: number; readonly jointsApart: Given }
  | { readonly way: 'hexagons' }
  | { readonly way: 'rings' };

/** Where the first unit lies and how the courses run: only what is said. Sides count from nought. */
export interface Start {
  readonly key?: Key;
  /** The side that the courses run along. */
  readonly along?: number;
  /** Sides along which only whole units lie. */
  readonly whole: readonly number[];
  /** The same cut at both ends of the courses. */
  readonly equalCuts: boolean;
  /** The corner that the first unit lies in. */
  readonly from?: Point;
  /** The first unit's corner is moved on, m. */
  readonly shifted?: { readonly along: Given; readonly across: Given };
  /** Degrees anticlockwise. */
  readonly turned?: Given;
  /** Joint lines go on from this area. */
  readonly carriedOnFrom?: Key;
  /** Joint lines go on from what is there: one of its joint lines runs through this point and crosses this side. */
  readonly jointLine?: { readonly at: Point; readonly side: number };
}

/** Soldiers stand with their long side square to the edge, sailors lie with it along the edge. */
export type BorderCourse = 'soldier-course' | 'sailor-course';

export interface Border {
  readonly key: Key;
  readonly unit: Unit;
  readonly course: BorderCourse;
  readonly joint: Joint;
  /** The sides it runs along, or the box, pit or inset it runs round. */
  readonly along: { readonly sides: readonly number[] } | { readonly round: Key };
  readonly corners: 'mitred' | 'butted';
}

/** A course across the area, square to a side. */
export interface Band {
  readonly key: Key;
  readonly unit: Unit;
  readonly course: BorderCourse;
  readonly joint: Joint;
  readonly side: number;
  /** From the beginning of the side to the middle of the band, m. */
  readonly at: Given;
}

export interface Inset {
  readonly key: Key;
  readonly name: string;
  readonly area: Key;
  readonly outline: Loop;
  readonly paving: Paving;
  readonly start: Start;
}

export interface Unit {
  readonly key: Key;
  readonly name: string;
  readonly madeOf: 'concrete' | 'clay';
  readonly length: Given;
  readonly width: Given;
  readonly thickness: Given;
  /** kg a piece. */
  readonly weight?: Given;
  readonly colour?: string;
  /** A hexagon is as long as it is across its corners, as wide as across its flats. */
  readonly shape: 'rectangle' | 'hexagon';
  /** One long side must stay on the outside of what it edges. */
  readonly finishedEdge: boolean;
  /** Tapped down by hand, not vibrated. */
  readonly setByHand?: true;
  /** Pieces in a pack. */
  readonly pack?: Given;
}

export type Role = 'base' | 'sub-base' | 'bed' | 'joint-filler' | 'edging' | 'fixing' | 'geotextile' | 'concrete';

export interface Material {
  readonly key: Key;
  readonly name: string;
  readonly roles: readonly Role[];
  /** Set when the job leaves the material out and the shipped one of that role stands in. */
  readonly assumed?: Assumed;
  /** kg/m3, in place. */
  readonly compacted?: Given;
  /** kg/m3, as tipped. */
  readonly loose?: Given;
  /** Loose volume for one compacted volume. */
  readonly compactionFactor?: Given;
  /** Open-graded stone or grit: drains, and has no fines. */
  readonly openGraded: boolean;
  /** Edging: how far its back stands from the face of the units, m. */
  readonly width?: Given;
  /** Edging: distance from spike to spike, m. */
  readonly spikesEvery?: Given;
  /** Edging: how far the base runs past its back, m. */
  readonly basePast?: Given;
  /** Edging: concrete it stands on: `width` across the edge, `depth` down, of which `under` lies under the paving, m. */
  readonly concrete?: { readonly width: Given; readonly depth: Given; readonly under: Given };
  /** Edging: concrete behind it, `width` by `height`, rectangular, m. */
  readonly haunch?: { readonly width: Given; readonly height: Given };
  /** Geotextile: roll width and length, m. */
  readonly roll?: { readonly width: Given; readonly length: Given };
  /** Geotextile: lap from roll to roll, m. */
  readonly lap?: Given;
  /** Edging set in concrete, or concrete: the wait before anything is compacted against it, s. */
  readonly wait?: Given;
  /** Edging: length of the pieces for curves, m. */
  readonly curvePieces?: Given;
  /** Edging: length of a piece, m. */
  readonly length?: Given;
  /** Edging: height of a piece, m. */
  readonly height?: Given;
  /** What is bought of it besides what is needed, where it says so. */
  readonly allowances?: Allowances;
  /** Joint filler: it stays loose and is swept a second time; false: it sets hard, and is swept once. */
  readonly unbound?: boolean;
}

export interface Layer {
  readonly key: Key;
  readonly role: 'bed' | 'base' | 'sub-base';
  readonly material: Material;
  readonly thickness: Given;
  /** How far it runs past the edging at open edges, where the area's text says so, m. */
  readonly past?: Given;
  /** Stone: what is spread and compacted in one go at most, m, compacted. */
  readonly inPartsOf?: Given;
  /** Bed: how far it settles under the plate, m. */
  readonly settles?: Given;
}

/** What one side of the outline meets. */
export interface Edge {
  /** `A to B`, `left`, `leg 3`, `all round`: as a person would name the side. */
  readonly name: string;
  readonly key: Key;
  /** Absent: nothing is said of this side. */
  readonly meets?: Meets;
  readonly flush: boolean;
  readonly edging?: Material;
  readonly edgingSet?: 'before' | 'after';
  /** How far the edging stands above the finish, m. */
  readonly standing?: Given;
  /** Concrete behind the last course. */
  readonly backed?: true;
  readonly wall?: WallHeights;
}

export interface Meets {
  readonly name: string;
  /** The thing met, when it is an area of this job. */
  readonly area?: Key;
  /** Open ground: the base may run past the edge there. */
  readonly openGround: boolean;
  /** What stands there holds the paving, so no edging is needed. */
  readonly holds: boolean;
  readonly drain?: Key;
  /** What is there already, where it was declared. */
  readonly existing?: Key;
  /** Of what is there already: the kind of side that it is. */
  readonly kind?: string;
  /** Heights taken on it. */
  readonly heights?: readonly SpotLevel[];
  /** The thing named is nowhere declared (its own finding says so): taken as closed and holding. */
  readonly unknown?: true;
}

/**
 * A box, a pit or a drain: kept out of units, joints, bed, base, geotextile and dig. A box that is cut down and buried is
 * no longer there: it is kept out of nothing.
 */
export interface KeptOut {
  readonly key: Key;
  readonly name: string;
  readonly kind: 'box' | 'pit' | 'drain';
  readonly area: Key;
  readonly outline: Loop;
  readonly lid?: Height;
  readonly use?: BoxUse;
  /** Radius about its middle within which nothing is dug, m. */
  readonly noDig?: Given;
}
