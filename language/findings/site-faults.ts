import { inside, type Point } from '../geometry/index.ts';
import type { SiteHeights } from '../job/heights.ts';
import type { Area, Job, System } from '../job/job.ts';
import type { GroundFault } from '../levels/ground.ts';
import { printArea } from '../measures/print.ts';
import { isFault, measuredGround } from '../quantities/area-heights.ts';
import type { LayersNumbers } from '../quantities/layers-stage.ts';
import { areaInDig } from '../quantities/old-paving.ts';
import type { GateQuantities } from '../quantities/site-contract.ts';
import type { RawFinding } from './finding.ts';

/** Heights of the ground that make no ground; told once, of the site. */
export function groundFaults({ areas }: Pick<Job, 'areas'>): RawFinding[] {
  const site = areas[0]?.site;
  const heights = site?.heights;
  if (heights === undefined) return [];
  const ground = measuredGround(site!);
  const fault = ground !== undefined && isFault(ground) ? whyNone(ground, heights) : undefined;
  const stray = heights.breakLines.flat().find(point => spotAt(point, heights) === undefined);
  const told = fault ?? (stray && STRAY);
  if (told === undefined) return [];
  const at = heights.ground[0]?.key;
  return [{ id: 'ground-does-not-fit', message: told, target: 'site', ...(at === undefined ? {} : { at }) }];
}

const STRAY =
  'A break line runs through a point at which no height of the ground was taken: until it is, the line does not count. Take a height there.';

function whyNone(fault: GroundFault, { ground }: SiteHeights): string | undefined {
  const name = (spot: number): string => ground[spot]?.name ?? '';
  switch (fault.kind) {
    case 'break-lines-cross': {
      const [one, other] = [fault.first, fault.second].map(({ from, to }) => `${name(from)} to ${name(to)}`);
      return `The break lines ${one} and ${other} cross where no height was taken: until one is, the ground is not known. Take a height where they cross, and lead both lines through it.`;
    }
    case 'two-heights':
      return `The ground has two heights at one place, at ${name(fault.first)} and at ${name(fault.second)}: until one is taken out, it is not known.`;
    case 'spots-too-nearly-in-line':
      return 'The heights of the ground lie so nearly in one line that nothing can be told of the ground beside it: take some to both sides.';
    case 'no-such-spot':
      return STRAY;
    case 'no-spots':
      return undefined;
  }
}

function spotAt({ x, y }: Point, { ground }: SiteHeights): object | undefined {
  return ground.find(({ at }) => at.x === x && at.y === y);
}

/** Square metres: less is a crumb. */
const LEAST_BEYOND = 0.05;

/** Digs that reach past the places where the ground was measured; told once, of the site. `beyond`: m2. */
export function groundNotMeasured(
  digs: readonly { readonly area: Area; readonly beyond: number }[],
  system: System
): RawFinding[] {
  const past = digs.filter(({ area, beyond }) => beyond > LEAST_BEYOND && isMeasuredAtPoints(area));
  const [first] = past;
  if (first === undefined) return [];
  const of = past.map(({ area, beyond }) => `${printArea(beyond, system)} of the dig of ${area.name}`);
  const at = first.area.site.heights?.ground[0]?.key;
  return [
    {
      id: 'ground-not-measured',
      message: `The ground was not measured under ${inWords(of)}: it is taken to lie as high there as at the nearest place where it was. Take heights there too.`,
      target: 'site',
      ...(at === undefined ? {} : { at }),
      values: [
        {
          name: 'dig where the ground was not measured',
          value: past.reduce((sum, { beyond }) => sum + beyond, 0),
          measure: 'm2'
        }
      ]
    }
  ];
}

function isMeasuredAtPoints({ site }: Area): boolean {
  const ground = measuredGround(site);
  return ground !== undefined && !isFault(ground);
}

function inWords(all: readonly string[]): string {
  return all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)!}`;
}

/** Soft spots that lie wholly outside the dig of their area. */
export function softSpotsOutside(
  area: Area,
  { baseLoops, softSpots }: Pick<LayersNumbers, 'baseLoops' | 'softSpots'>
): RawFinding[] {
  const keptOut = area.keptOut.map(({ outline }) => outline);
  return area.softSpots.flatMap((spot, index): RawFinding[] =>
    // A deeper spot may take all of one that lies in the dig.
    (softSpots[index]?.bankVolume ?? 1) > 0 || areaInDig(spot.outline, { loops: baseLoops, keptOut }) > 0
      ? []
      : [
          {
            id: 'soft-spot-outside-dig',
            message: `This soft spot lies outside the dig of ${area.name}: nothing is counted for it. Check its middle and which way it is told from.`,
            target: area.key,
            at: spot.key
          }
        ]
  );
}

/** Heights in the log, measured where no area is whose height is known. */
export function measuredNowhere({ log }: Pick<Job, 'log'>, areas: readonly Area[]): RawFinding[] {
  return log.flatMap((entry): RawFinding[] => {
    if (entry.kind !== 'height' || entry.area !== undefined) return [];
    const astray = entry.at.filter(({ point }) => !areas.some(({ outline }) => inside(outline, point)));
    if (astray.length === 0) return [];
    const names = astray.map(({ name }) => name).join(', ');
    return [
      {
        id: 'measured-in-no-area',
        message: `${names} ${astray.length === 1 ? 'lies' : 'lie'} in no area: what was measured there is held against nothing. Say of which area it is: \`measured ${entry.layer} of ${areas[0]?.name ?? 'terrace'} at …\`.`,
        target: 'job',
        at: entry.key
      }
    ];
  });
}

/** Gates and doors whose leaf lies over no paving. */
export function gatesOverNothing(
  gates: readonly GateQuantities[],
  { gates: said }: Pick<Job, 'gates'>,
  areas: readonly Area[]
): RawFinding[] {
  return gates.flatMap(({ id, name, overPaving }): RawFinding[] => {
    const into = said.find(({ key }) => key === id)?.leaf?.into;
    const area = areas.find(({ key }) => key === into);
    if (overPaving !== false || area?.finish === undefined) return [];
    return [
      {
        id: 'gate-over-no-paving',
        message: `The leaf of ${name} swings over no part of ${area.name}: nothing can be told of its clearance. Check its hinge, its length and the point that it is shut towards.`,
        target: id
      }
    ];
  });
}
