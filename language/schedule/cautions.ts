import type { Edge } from '../job/job.ts';
import type { PriceList } from '../job/prices.ts';
import type { TaskWord } from '../job/work.ts';
import { printAs } from '../measures/print.ts';
import type { Caution, HoursLine, PlannedCrew } from './contract.ts';
import { dustCaution } from './dust-caution.ts';
import { liftingCautions } from './lifting-cautions.ts';
import type { ToPlace } from './place-tasks.ts';
import { TAPPING } from './laying-tasks.ts';
import { namesInRow, type Planned } from './planned.ts';

/** A caution with the tasks that it belongs to: it is told once, at the first of them that is still to be done. */
export interface Belonging extends Caution {
  readonly at: readonly (TaskWord | 'concrete-work')[];
}

/** Deeper than this, m, nobody goes into a trench whose sides were not seen to. */
const DEEPEST = 1.2;

/** What can hurt someone, at the task where it does; each once, as the spec gives cause. */
export function cautionsOf(
  planned: Planned,
  crew: PlannedCrew,
  tasks: readonly ToPlace[],
  cutting: readonly HoursLine[],
  prices: readonly PriceList[]
): ReadonlyMap<string, Caution[]> {
  const told = new Map<string, Caution[]>();
  const all = [
    ...groundCautions(planned),
    ...machineCautions(planned),
    ...layingCautions(planned, crew, cutting, prices)
  ];
  for (const { at, ...caution } of all) {
    const task = tasks.find(one => one.done === undefined && at.some(word => belongs(one, word)));
    if (task !== undefined) told.set(task.id, [...(told.get(task.id) ?? []), caution]);
  }
  return told;
}

function belongs({ draft }: ToPlace, word: Belonging['at'][number]): boolean {
  if (draft === undefined) return false;
  if (word === 'concrete-work') return draft.efforts.some(({ task }) => task === 'concrete');
  return draft.word === word && draft.id !== TAPPING;
}

function when(holds: boolean, caution: Belonging): Belonging[] {
  return holds ? [caution] : [];
}

function groundCautions(planned: Planned): Belonging[] {
  const { job, quantities, areas } = planned;
  const told = job.pipes.map(({ name, carries, proven }) => {
    const what = carries === undefined || name.includes(carries) ? name : `${name} (${carries})`;
    return `${what}, depth ${proven ? 'proven at one place' : 'not proven'}`;
  });
  const crossing = (quantities.pipes ?? []).filter(({ crossesDig }) => crossesDig).map(({ name }) => name);
  const deepest = Math.max(
    0,
    ...areas.map(({ area, numbers }) => {
      const soft = Math.max(0, ...area.softSpots.map(({ deeper }) => deeper.value));
      return numbers.dig.deepest + soft;
    })
  );
  const isPublic = areas.some(({ area }) => area.edges.some(edge => meetsOneOf(edge, PUBLIC_WAYS)));
  return [
    {
      id: 'services',
      at: ['locate'],
      text: `Public lines and private ones: those who mark the public ones leave out water to a tap, irrigation, garden light, drains, a cable to a shed.${told.length === 0 ? '' : ` Told here: ${told.join('; ')}. Others may lie here.`}`
    },
    {
      id: 'dig-near-lines',
      at: ['dig', 'break-out'],
      text: `By hand near every line, marked or not; a stated depth is no proof.${crossing.length === 0 ? '' : ` Over the dig lead: ${namesInRow(crossing)}.`}`
    },
    ...when(deepest > DEEPEST, {
      id: 'deep-dig',
      at: ['dig', 'soft-spots'],
      text: `Stop: ${printAs('length', deepest, job.system)} deep. Sides of a dig deeper than ${job.system === 'imperial' ? '4 ft' : '1.2 m'} can bury a person. Nobody goes in before a competent person has seen to them.`
    }),
    ...when(isPublic, {
      id: 'public-way',
      at: ['break-out', 'dig', 'cart-away', 'base', 'bed', 'laying'],
      text: 'Footway and road stay open, guarded and lit. A skip, a heap or work in them, and a dropped kerb, need leave of the road authority.'
    }),
    {
      id: 'breaking-out',
      at: ['break-out'],
      text: 'Water on the dust; eyes, ears, lungs and feet protected.'
    },
    {
      id: 'waste',
      at: ['cart-away'],
      text: isBritish(planned)
        ? 'Soil and rubble go with a registered waste carrier to a place that may take them; keep the transfer notes.'
        : 'Soil and rubble go with a carrier and to a place that may take them, by local rules; keep the papers.',
      source: 'from memory'
    },
    {
      id: 'wet-concrete',
      at: ['concrete-work'],
      text: 'Wet concrete burns skin and eyes: gloves, boots and glasses, and wash it off at once.',
      source: 'common practice'
    }
  ];
}

const PUBLIC_WAYS = ['footway', 'road', 'kerb', 'sidewalk', 'street'];

/** Whether one of the words is in the name of what a side meets, or of its kind: `town-road` is a road. */
function meetsOneOf({ meets }: Edge, words: readonly string[]): boolean {
  const parts = [meets?.name, meets?.kind].flatMap(name => name?.split('-') ?? []);
  return words.some(word => parts.includes(word));
}

function isBritish({ job }: Planned): boolean {
  return job.rulebooks.some(({ id }) => id === 'britain');
}

/** Plate and engines. */
function machineCautions({ job, areas }: Planned): Belonging[] {
  const sides = areas.flatMap(({ area }) => area.edges);
  const isByWall = sides.some(edge => edge.wall !== undefined || meetsOneOf(edge, ['wall']));
  const isByRoom =
    job.gates.some(({ kind }) => kind === 'door') ||
    sides.some(edge => meetsOneOf(edge, ROOMS) || isAtDrain(edge, sides));
  return [
    {
      id: 'plate',
      at: ['base', 'vibrating'],
      text: 'The plate: ears protected, feet clear, and turns taken, for it shakes hands and arms.',
      source: 'common practice; limits of vibration in Europe by Directive 2002/44, from memory'
    },
    ...when(isByWall, {
      id: 'walls',
      at: ['base', 'vibrating'],
      text: 'Beside old or weak walls compact by hand or with a small plate, and stop at any crack: an engineer judges it.',
      source: 'common practice'
    }),
    ...when(isByWall || isByRoom, {
      id: 'fumes',
      at: ['base', 'cutting', 'vibrating'],
      text: 'Engines off in garages and closed yards, and their fumes away from doors, windows and air inlets: carbon monoxide can kill unnoticed.',
      source: 'common practice'
    })
  ];
}

/** Where people, or engines, are behind a wall. */
const ROOMS = ['garage', 'house', 'building', 'door', 'workshop', 'shed', 'cellar'];

/** A drain with paving on one side alone lies along a door or a wall, as before a garage; one between two areas does not. */
function isAtDrain({ meets }: Edge, sides: readonly Edge[]): boolean {
  const drain = meets?.drain;
  if (drain === undefined) return meets !== undefined && [meets.name, meets.kind].includes('drain-channel');
  return sides.filter(other => other.meets?.drain === drain).length === 1;
}

/** Of the hours of cutting those at the saw, told by the length of its cuts; all of them where they are not told so. */
function sawingHours(cutting: readonly HoursLine[]): number {
  const left = cutting.filter(({ done }) => done === undefined);
  const saw = left.filter(({ amount }) => amount.per === 'm');
  return (saw.length > 0 ? saw : left).reduce((sum, { hours }) => sum + hours, 0);
}

function layingCautions(
  planned: Planned,
  crew: PlannedCrew,
  cutting: readonly HoursLine[],
  prices: readonly PriceList[]
): Belonging[] {
  const sawing = sawingHours(cutting);
  const isBound = planned.areas.some(({ area }) => area.jointFiller?.unbound === false);
  return [
    ...liftingCautions(planned, prices),
    { ...dustCaution(sawing, crew.hours.value, isBritish(planned)), at: ['cutting'] },
    {
      id: 'saw',
      at: ['cutting'],
      text: 'Eyes and ears protected, guard on, a blade for that saw. An electric saw that runs with water only behind a device that cuts the current off at a fault (GFCI, RCD).',
      source: 'common practice'
    },
    {
      id: 'slurry',
      at: ['cutting'],
      text: 'Slurry stays out of drains, channels and the street, and is washed off units before it dries.',
      source: 'common practice'
    },
    {
      id: 'sand-dust',
      at: ['joints'],
      text: `Dry sand raises dust with quartz in it: sweep with the wind at your back, lungs and eyes protected.${isBound ? ' The sheet of the bound filler says what else to protect.' : ''}`,
      source: 'common practice'
    }
  ];
}
