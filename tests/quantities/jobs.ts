import { cornerLoop, rectangleLoop, type Loop } from '../../language/geometry/index.ts';
import type { Finish } from '../../language/job/heights.ts';
import type {
  Area,
  Edge,
  Given,
  Height,
  Job,
  KeptOut,
  Layer,
  Material,
  Meets,
  Paving,
  Role,
  Site,
  Unit
} from '../../language/job/job.ts';
import { computeJob } from '../../language/quantities/compute-job.ts';
import type { AreaQuantities, JobNumbers } from '../../language/quantities/contract.ts';
import { drain, Session } from '../../language/session/session.ts';

export const INCH = 0.0254;
export const FOOT = 0.3048;
export const SQUARE_FOOT = FOOT ** 2;
export const CUBIC_FOOT = FOOT ** 3;
export const CUBIC_YARD = 27 * CUBIC_FOOT;
export const POUND = 0.45359237;
export const SHORT_TON = 2000 * POUND;
export const POUND_PER_CUBIC_FOOT = POUND / CUBIC_FOOT;

/** A quantity as if written in the text, at a place of its own. */
export function given(value: number, key = `given:${value}`): Given {
  return { value, key, written: String(value) };
}

export const LAWN: Meets = { name: 'lawn', openGround: true, holds: false };
export const HOUSE_WALL: Meets = { name: 'house-wall', openGround: false, holds: true };
/** A side that meets another area of the job. */
export function meeting(name: string): Meets {
  return { name, area: `area:${name}`, openGround: false, holds: true };
}

/** An area that is not there: broken, or not yet written. */
export const NEIGHBOUR = meeting('neighbour');

export function material(name: string, role: Role, more: Partial<Material> = {}): Material {
  return { key: `material:${name}`, name, roles: [role], openGraded: false, ...more };
}

export function unit(length: number, width: number, thickness: number, madeOf: Unit['madeOf'] = 'concrete'): Unit {
  return {
    key: 'unit:block',
    name: 'block',
    madeOf,
    length: given(length),
    width: given(width),
    thickness: given(thickness),
    shape: 'rectangle',
    finishedEdge: false
  };
}

export function paving(of: Unit, joint: number, offset = 0.5): Paving {
  return {
    key: 'area:a/paving',
    units: [of],
    bond: {
      key: 'bond:some',
      name: offset === 0 ? 'stack-bond' : 'running-bond',
      way: 'courses',
      offset: given(offset)
    },
    joint: { width: given(joint), least: given(joint), most: given(joint) }
  };
}

export const STONE = material('stone', 'base', {
  compacted: given(140 * POUND_PER_CUBIC_FOOT),
  loose: given(112 * POUND_PER_CUBIC_FOOT)
});
const SAND = material('sand', 'bed', { compacted: given(1700), loose: given(1500) });

export function layer(role: Layer['role'], thickness: number, more: Partial<Layer> = {}): Layer {
  return { key: `area:a/${role}`, role, material: role === 'bed' ? SAND : STONE, thickness: given(thickness), ...more };
}

export const SITE: Site = {
  soil: { name: 'loam', swell: given(0.25), density: given(1600), heavesInFrost: false },
  drains: 'well',
  winters: 'mild'
};

/** Level with the benchmark. */
export const LEVEL: Height = { benchmark: 'sill', above: given(0), fromNought: false };
/** The same site, with the height of its ground. */
export const LEVEL_SITE: Site = { ...SITE, ground: LEVEL };
/** Finish and ground of an area that lies level with today's ground. */
export const HEIGHTS: AreaWords = { finish: LEVEL, site: LEVEL_SITE };

/** What an area says; a finish that is level all over may be told by its height. */
export type AreaWords = Partial<Omit<Area, 'finish'>> & { readonly finish?: Height | Finish };

function finishOf(said: Height | Finish): Finish {
  if (!('above' in said)) return said;
  const z = said.fromNought ? said.above.value : (said.base?.value ?? 0) + said.above.value;
  const surface = { kind: 'plane', plane: { at: z, alongX: 0, alongY: 0 } } as const;
  return { key: 'area:a/finish', level: said, surface, heights: [], falls: [] };
}

/** An area on open ground all round, with nothing under it; `sides` says what single sides meet. */
export function area(outline: Loop, words: AreaWords = {}, sides: readonly Partial<Edge>[] = []): Area {
  const { finish, ...more } = words;
  const name = more.name ?? 'a';
  const edges = outline.map((_, index): Edge => ({
    name: `side ${index + 1}`,
    key: `area:${name}/edge-${index + 1}`,
    meets: LAWN,
    flush: false,
    ...sides[index]
  }));
  return {
    key: `area:${name}`,
    name,
    outline,
    edges,
    keptOut: [],
    traffic: ['foot'],
    site: SITE,
    layers: [],
    start: { whole: [], equalCuts: false },
    borders: [],
    bands: [],
    insets: [],
    drains: [],
    softSpots: [],
    brokenOut: [],
    ...(finish === undefined ? {} : { finish: finishOf(finish) }),
    ...more
  };
}

export function box(name: string, outline: Loop, kind: KeptOut['kind'] = 'box'): KeptOut {
  return { key: `box:${name}`, name, kind, area: 'area:a', outline };
}

export function rectangle(width: number, depth: number, x = 0, y = 0): Loop {
  return rectangleLoop(width, depth, { x, y }, 0);
}

export function corners(...points: readonly (readonly [number, number])[]): Loop {
  return cornerLoop(points.map(([x, y]) => ({ x, y })));
}

export function job(areas: readonly Area[], more: Partial<Job> = {}): Job {
  return {
    key: 'job',
    title: 'Test job',
    system: 'metric',
    rulebooks: [],
    rules: [],
    suppliers: [],
    prices: [],
    stock: [],
    concrete: { key: 'material:concrete', name: 'concrete', roles: ['concrete'], openGraded: false },
    buying: { keep: [], sawCut: given(0.003), offcutsStay: false },
    usualStone: 'type-1',
    usualFall: '1:60',
    points: [],
    areas,
    boxes: [],
    tapes: [],
    setUps: [],
    lines: [],
    sections: [],
    drains: [],
    pipes: [],
    gates: [],
    routes: [],
    levelSheet: {},
    log: [],
    carting: { barrow: given(0.085) },
    money: { hires: [], extras: [], excludes: [] },
    work: { tasks: [], rates: [] },
    notes: [],
    accepts: [],
    missing: [],
    ...more
  };
}

export function numbersOf(of: Job, session = new Session()): JobNumbers {
  return drain(computeJob(of, session));
}

/** The numbers of a job's only area. */
export function only(of: Area, more: Partial<Job> = {}): AreaQuantities {
  return numbersOf(job([of], more)).quantities.areas[0]!;
}
