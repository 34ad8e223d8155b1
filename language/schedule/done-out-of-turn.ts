import type { RawFinding } from '../findings/finding.ts';
import type { Area, Edge, Given, Job, Material } from '../job/job.ts';
import type { Stage } from '../job/log.ts';
import { dayNumber } from '../measures/days.ts';
import { type EdgingPlace, placeOfEdging } from './edging-tasks.ts';
import { concreteDays } from './holds.ts';
import { Logged, STAGES } from './logged.ts';
import { namesInRow } from './planned.ts';

const ID = 'done-out-of-turn';

/** What the log tells as done before what it waits for: a stage over one that came later, stone and bed before their edging. */
export function doneOutOfTurn({ areas, log, concrete }: Pick<Job, 'areas' | 'log' | 'concrete'>): RawFinding[] {
  const logged = new Logged(log);
  if (logged.last === undefined) return [];
  return areas.flatMap(area => [...stages(area, logged), ...edging(area, logged, concrete)]);
}

const WORDS: Readonly<Record<Stage, string>> = {
  dig: 'The dig',
  geotextile: 'The geotextile',
  edging: 'The edging',
  'sub-base': 'The sub-base',
  base: 'The base',
  bed: 'The bed',
  paving: 'The paving',
  joints: 'The joints'
};

/** Stages of an area that the log tells before one that lies under them. */
function stages({ key, name }: Area, logged: Logged): RawFinding[] {
  return STAGES.flatMap((stage, index): RawFinding[] => {
    const [own] = logged.of(key, stage);
    if (own === undefined) return [];
    const under = STAGES.slice(0, index)
      .toReversed()
      .flatMap(lower => logged.of(key, lower)[0] ?? [])
      .find(({ date }) => date > own.date);
    if (under === undefined) return [];
    const lower = WORDS[under.stage].toLowerCase();
    return [
      {
        id: ID,
        message: `${WORDS[stage]} of ${name} is logged as done on ${own.date}, and ${lower}, which comes first, on ${under.date}. Look whether one of the days is a slip.`,
        target: key,
        at: own.key
      }
    ];
  });
}

/** One side with its edging, the place that it has in the work, and the day on which it was logged as set. */
interface Side {
  readonly edge: Edge;
  readonly material: Material;
  readonly place: EdgingPlace;
  readonly set: string | undefined;
}

/** What must not be there before the edging is: stone where it stands in concrete, else the bed. */
function edging(area: Area, logged: Logged, concrete: Material): RawFinding[] {
  const sides = area.edges.flatMap((edge): Side[] => {
    const { edging: material } = edge;
    if (material === undefined) return [];
    return [{ edge, material, place: placeOfEdging(edge, material), set: logged.edgingTold(area.key, edge) }];
  });
  const stone = area.layers.some(({ role }) => role === 'sub-base') ? 'sub-base' : 'base';
  return [
    ...before(area, logged, stone, sides, 'edging-on-concrete', concrete.wait),
    ...before(area, logged, 'bed', sides, 'edging-before', undefined)
  ];
}

function before(
  area: Area,
  logged: Logged,
  stage: Stage,
  sides: readonly Side[],
  place: EdgingPlace,
  usual: Given | undefined
): RawFinding[] {
  // With a layer over it done, what lies under it is done too; behind units the edging is taken to stand.
  const [entry] = STAGES.slice(STAGES.indexOf(stage), STAGES.indexOf('paving')).flatMap(each =>
    logged.of(area.key, each)
  );
  if (entry === undefined) return [];
  const found = (all: readonly Side[], why: (what: string) => string): RawFinding[] =>
    all.length === 0 ? [] : [{ id: ID, message: why(sidesText(all)), target: area.key, at: entry.key }];
  const told = `${WORDS[entry.stage]} of ${area.name} is logged as done on ${entry.date}`;
  const there = sides.filter(side => side.place === place);
  const open = there.filter(({ edge, set }) => set === undefined && logged.edging(area.key, edge) === undefined);
  const late = there.filter(({ set }) => set !== undefined && set > entry.date);
  const daysOf = ({ material }: Side): number =>
    place === 'edging-on-concrete' ? concreteDays(material.wait ?? usual) : 0;
  const soon = there.filter(
    side => side.set !== undefined && side.set <= entry.date && passed(side.set, entry.date) < daysOf(side)
  );
  const days = Math.max(...soon.map(daysOf));
  return [
    ...found(
      open,
      what =>
        `${told}, and edging that comes before it is not: ${what}. Set it before more is done there, or log it: \`done edging of ${area.name}\`.`
    ),
    ...found(
      late,
      what => `${told}, and edging that comes before it only later: ${what}. Look whether one of the days is a slip.`
    ),
    ...found(
      soon,
      what =>
        `${told}, and the concrete of ${what} had not set for ${days === 1 ? '1 day' : `${days} days`} by then. Look whether it has moved, or whether one of the days is a slip.`
    )
  ];
}

function passed(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** `kerb-50 along G2 to T1 and W to G1` */
function sidesText(sides: readonly Side[]): string {
  const materials = [...new Set(sides.map(({ material }) => material.name))];
  const parts = materials.map(name => {
    const own = sides.filter(({ material }) => material.name === name);
    return `${name} along ${namesInRow(own.map(({ edge }) => edge.name))}`;
  });
  return parts.join(', ');
}
