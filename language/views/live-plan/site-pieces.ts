import { boundsOf, middleOf, type Point, pointAlong, type Side } from '../../geometry/index.ts';
import { heading } from '../../geometry/moved-side.ts';
import type { Gate } from '../../job/heights.ts';
import type { Job, Key, KeptOut } from '../../job/job.ts';
import { printLength } from '../../measures/print.ts';
import { quantityOf } from '../../quantities/catalogue.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import { upright } from '../plan/cut-numbers.ts';
import type { PlanInput } from '../plan/plan-input.ts';
import type { PlanThing, ThingKind } from '../plan/plan-site.ts';
import { keptOutText } from '../plan/plan-text.ts';
import { UNDER } from '../plan/thing-shapes.ts';
import { cutDownText, lidText, shortDepth } from '../plan/things-of-job.ts';
import { rowsOf } from '../rows.ts';
import { aroundAll, cornersOf, lineOf, mm, type MmBounds, mmBounds, mmPoint, turnOf } from './in-millimetres.ts';
import type { LiveShape, LiveThing } from './live-plan.ts';
import { fact, type LayerName, type Piece, type UnledThing } from './piece.ts';

/** The table's heading for each kind of thing. */
const HEADINGS: Readonly<Record<ThingKind, string>> = {
  gate: 'Gates and doors',
  door: 'Gates and doors',
  channel: 'Drains',
  gully: 'Drains',
  outlet: 'Drains',
  pipe: 'Pipes',
  'buried box': 'Boxes and pits',
  'no dig': 'Boxes and pits',
  'soft spot': 'Soft spots',
  'old paving': 'Old paving',
  'break line': 'Break lines',
  route: 'Routes',
  section: 'Sections',
  'set-out point': 'Set-out points'
};

/** What stands or lies in the job besides its areas, each thing with all that is drawn of it. */
export function sitePieces(job: Job, input: PlanInput, quantities: JobQuantities): Piece[] {
  const byOwner = new Map<Key, PlanThing[]>(job.boxes.map(({ key }) => [key, []]));
  for (const thing of input.site?.things ?? []) {
    const owner = ownerOf(thing);
    const held = byOwner.get(owner) ?? [];
    byOwner.set(owner, held);
    held.push(thing);
  }
  return [...byOwner].flatMap(([key, things]) => {
    const box = job.boxes.find(one => one.key === key);
    const known =
      box === undefined ? thingOf(key, things, job, quantities) : boxThing(box, things, input, job, quantities);
    if (known === undefined) return [];
    const inAreas = areasOf(key, job);
    return [
      {
        key,
        name: known.name,
        layers: layersOf(key, things, job),
        things: [known],
        from: { things },
        ...(inAreas.length === 0 ? {} : { with: inAreas })
      }
    ];
  });
}

/** The thing that the text declares; of what has no name of its own what it is drawn as. */
function ownerOf({ key, kind, name }: PlanThing): Key {
  if (kind === 'set-out point') return `${key.replace(/\/\d+$/, '')}/${name}`;
  return kind === 'soft spot' || kind === 'break line' ? key : key.replace(/\/.*$/, '');
}

function areasOf(key: Key, { areas, boxes }: Job): Key[] {
  const box = boxes.find(one => one.key === key);
  if (box !== undefined) return [box.area];
  return areas
    .filter(
      area =>
        key.startsWith(`${area.key}/`) ||
        area.softSpots.some(spot => spot.key === key) ||
        area.brokenOut.some(old => old.key === key)
    )
    .map(area => area.key);
}

// ---- what is drawn ----

function layersOf(owner: Key, things: readonly PlanThing[], job: Job): Piece['layers'] {
  const layers: Partial<Record<LayerName, LiveShape[]>> = {};
  for (const thing of things) {
    const layer = UNDER.has(thing.kind) ? 'under' : 'over';
    (layers[layer] ??= []).push(...shapesOf(owner, thing));
    (layers.names ??= []).push(...labelsOf(owner, thing, job));
  }
  const gate = job.gates.find(({ key }) => key === owner);
  if (gate !== undefined && layers.over?.some(({ kind }) => kind === 'path')) layers.over.push(...jambsOf(gate));
  return layers;
}

function shapesOf(thing: Key, { key: own, kind, parts, dots }: PlanThing): LiveShape[] {
  const key = kind === 'set-out point' ? thing : own;
  const content = kind === 'set-out point' ? 'points' : 'things';
  return [
    ...parts.map((part, index): LiveShape => ({
      kind: 'path',
      key: index === 0 ? key : `${key}/${index + 1}`,
      content,
      ink: part.ink,
      thing,
      loops: ['loop' in part ? cornersOf(part.loop) : lineOf(part.sides)],
      closed: 'loop' in part
    })),
    ...dots.map(({ x, y }, index): LiveShape => ({
      kind: 'mark',
      key: `${key}/dot-${index + 1}`,
      content,
      ink: 'dot',
      thing,
      x: mm(x),
      y: mm(y),
      sign: kind === 'set-out point' ? 'diamond' : 'dot'
    }))
  ];
}

/** Half of a tick across the line at each end of an opening, m. */
const HALF_JAMB = 0.1;

/** Where the opening of a gate or door begins and ends. */
function jambsOf({ key, leaf, opening }: Gate): LiveShape[] {
  const [from, to] = opening === undefined ? [leaf?.hinge, leaf?.end] : [opening.from, opening.to];
  if (from === undefined || to === undefined) return [];
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [x, y] = [(-(to.y - from.y) / length) * HALF_JAMB, ((to.x - from.x) / length) * HALF_JAMB];
  const tick = (at: Point): Side => ({ from: { x: at.x - x, y: at.y - y }, to: { x: at.x + x, y: at.y + y } });
  return [
    {
      kind: 'path',
      key: `${key}/jambs`,
      content: 'things',
      ink: 'tick',
      thing: key,
      loops: [from, to].map(at => lineOf([tick(at)])),
      closed: false
    }
  ];
}

/** What is written at a thing, how much it matters, and what it is switched with: the rest stands in its facts. */
function wordingOf({ kind, labels }: PlanThing, owner: Key, job: Job): Wording | undefined {
  if (kind === 'pipe') {
    const pipe = job.pipes.find(({ key }) => key === owner);
    // Who digs must see it: left out for nothing but names of areas.
    if (pipe === undefined) return undefined;
    const { name, carries } = pipe;
    const what = carries === undefined || name.includes(carries) ? name : `${name} (${carries})`;
    return { text: `${what}, ${shortDepth(pipe, job.system)}`, content: 'things', rank: 1.5 };
  }
  const text = kind === 'buried box' ? labels.at(-1) : labels[0];
  if (text === undefined) return undefined;
  if (kind === 'buried box' || kind === 'channel' || kind === 'gully') return { text, content: 'names', rank: 5 };
  return { text, content: 'things', rank: 6 };
}

interface Wording {
  readonly text: string;
  readonly content: 'things' | 'names';
  readonly rank: number;
}

/** A text about it; along a line with the room that it has there. */
function labelsOf(thing: Key, of: PlanThing, job: Job): LiveShape[] {
  const { key, kind, labelled, parts, dots } = of;
  const wording = wordingOf(of, thing, job);
  if (wording === undefined || parts.length + dots.length === 0) return [];
  const label = { kind: 'text', ink: 'text', thing, anchor: 'middle', ...wording } as const;
  if ('beside' in labelled) {
    const { x, y } = labelled.beside;
    return [{ ...label, key: `${key}/text`, x: mm(x), y: mm(y), turn: 0, anchor: 'start' }];
  }
  if ('along' in labelled) {
    const { room, ...place } = along(labelled.along);
    return [{ ...label, key: `${key}/text`, ...place, ...(kind === 'pipe' ? {} : { room }) }];
  }
  const [first, last] = labelled.ends;
  return [first.from, last.to].map(({ x, y }, index) => ({
    ...label,
    key: `${key}/text${index === 0 ? '' : `/${index + 1}`}`,
    x: mm(x),
    y: mm(y),
    turn: 0
  }));
}

function along(side: Side): { x: number; y: number; turn: number; room: number } {
  const { x, y } = pointAlong(side, 0.5);
  const way = heading(side, { x, y });
  const room = mm(Math.hypot(side.to.x - side.from.x, side.to.y - side.from.y));
  return { x: mm(x), y: mm(y), turn: turnOf(upright(Math.atan2(way.y, way.x))), room };
}

// ---- what is told ----

function thingOf(key: Key, things: readonly PlanThing[], job: Job, quantities: JobQuantities): UnledThing | undefined {
  const [first] = things;
  if (first === undefined) return undefined;
  const { kind, name, told } = first;
  const bounds = things.flatMap(boundsOfThing);
  if (bounds.length === 0) return undefined;
  const drain = job.drains.find(one => one.key === key);
  const called = NAMELESS.has(kind) ? told.replace(/:.*$/, '') : `${kind} ${name}`;
  const at = drain && middleOf(drain.outline);
  return {
    key,
    kind: HEADINGS[kind],
    name: called,
    facts: [
      ...things.flatMap(thing => (thing.told === called ? [] : [['On the plan', thing.told] as const])),
      ...numbersOf(key, job, quantities)
    ],
    bounds: aroundAll(bounds),
    ...(at === undefined ? {} : { handle: { x: mm(at.x), y: mm(at.y) } })
  };
}

/** Told by what they are and where. */
const NAMELESS: ReadonlySet<ThingKind> = new Set(['soft spot', 'break line', 'set-out point']);

function boundsOfThing({ parts, dots }: PlanThing): MmBounds[] {
  return [
    ...parts.map(part => mmBounds(boundsOf('loop' in part ? part.loop : part.sides))),
    ...dots.map(dot => mmPoint(dot))
  ];
}

/** Quantities of it, as its tables have them. */
function numbersOf(key: Key, { system, datum }: Job, quantities: JobQuantities): LiveThing['facts'] {
  const lists = [
    ['gate', quantities.gates],
    ['drain', quantities.drains],
    ['pipe', quantities.pipes],
    ['route', quantities.routes],
    ['box', quantities.boxes]
  ] as const;
  return lists.flatMap(([owner, list]) => {
    const numbers = (list as readonly { readonly id: Key }[] | undefined)?.find(({ id }) => id === key);
    if (numbers === undefined) return [];
    return rowsOf(owner, numbers, system, false, datum).map(({ words, value }) => [words, value] as const);
  });
}

function boxThing(
  box: KeptOut,
  things: readonly PlanThing[],
  { areas }: PlanInput,
  job: Job,
  quantities: JobQuantities
): UnledThing {
  const { key, kind, name, outline } = box;
  const { system } = job;
  const area = areas.find(one => one.key === box.area);
  const where = area && keptOutText(box, area, system);
  const taped = quantities.boxes?.find(({ id }) => id === key)?.tapedFrom ?? [];
  const raised = quantityOf('box', 'change').words;
  // What is told of the lid in words is not told once more as a number.
  const numbers = numbersOf(key, job, quantities).filter(([words]) => words !== raised);
  const at = middleOf(outline);
  return {
    key,
    kind: 'Boxes and pits',
    name: `${kind} ${name}`,
    facts: [
      ...fact('Over all', where?.size),
      ...fact('Its middle from the start', where?.middle),
      ...fact('Its lid', lidText(box, quantities, system) ?? cutDownText(box, quantities, system)),
      ...numbers,
      ...taped.map(({ point, distance }) => [`Tape from ${point}`, printLength(distance, system)] as const),
      ...things.map(thing => ['On the plan', thing.told] as const)
    ],
    bounds: aroundAll([mmBounds(boundsOf(outline)), ...things.flatMap(boundsOfThing)]),
    area: box.area,
    handle: { x: mm(at.x), y: mm(at.y) }
  };
}
