import type { Area, Height, Job, Site, System } from '../job/job.ts';
import { printHeight, printThickness } from '../measures/print.ts';
import type { RawFinding, RawFix } from './finding.ts';

/** A job whose layers need no dig. `groundAboveLayers`: height of the ground above the underside of the layers, m. */
export function nothingToDig(area: Area, groundAboveLayers: number, system: System): RawFinding[] {
  if (groundAboveLayers > 0 || area.finish?.level === undefined || area.site.ground === undefined) return [];
  return [
    {
      id: 'nothing-to-dig',
      message: `The layers of ${area.name} lie on or above the ground, by ${printThickness(-groundAboveLayers, system)}: no soil is dug there but topsoil, and the room under them is made up with stone.`,
      target: area.key,
      ...(area.finish.level.above.key === undefined ? {} : { at: area.finish.level.above.key }),
      values: [{ name: 'underside of the layers above the ground', value: -groundAboveLayers, measure: 'm' }]
    }
  ];
}

/** An area is dug whose height is not said. */
export function finishNotSaid(
  area: Area,
  deepest: number,
  { system, usualFall }: Pick<Job, 'system' | 'usualFall'>
): RawFinding[] {
  if (area.finish !== undefined || deepest === 0) return [];
  const height = `${example(area.site, area.site.ground, system)}${fallFromHouse(area, usualFall)}`;
  return [
    {
      id: 'finish-not-said',
      message: `The area ${area.name} does not say how high it will lie: its dig is counted as if the ground lay level with the finish. Write \`finish ${height}\`.`,
      target: area.key,
      fixes: [heightFix(area.site, { gap: `${area.key}/finish`, statements: [`finish ${height}`] })]
    }
  ];
}

/** Areas are dug, and the height of the ground is not said: told once for all. */
export function groundNotSaid(areas: readonly { area: Area; deepest: number }[], system: System): RawFinding[] {
  const dug = areas.find(
    ({ area, deepest }) => area.site.ground === undefined && area.site.heights?.ground[0] === undefined && deepest > 0
  );
  if (dug === undefined) return [];
  const { site, finish } = dug.area;
  const ground = `ground ${example(site, finish?.level, system)}`;
  return [
    {
      id: 'ground-not-said',
      message: `The site does not say how high the ground lies today: each dig is counted as if the ground lay level with the finish. Write \`${ground}\`.`,
      target: 'site',
      fixes: [heightFix(site, { gap: 'site/ground', statements: [ground] })]
    }
  ];
}

/** Level with the one that is said, as it is counted anyway; else as is usual. */
function example({ benchmark }: Site, other: Height | undefined, system: System): string {
  if (other === undefined) return `${system === 'imperial' ? '3 in' : '80 mm'} below ${benchmark ?? BENCHMARK}`;
  const nought = other.fromNought ? (other.base?.value ?? 0) : 0;
  return printHeight(other.above.value - nought, other.benchmark, system);
}

/** Water runs away from the house: where one side alone meets it, the finish falls from there, as is usual. */
function fallFromHouse({ edges }: Area, usualFall: string): string {
  const [side, ...others] = edges.filter(({ meets }) => (meets?.kind ?? meets?.name) === 'house-wall');
  if (side === undefined || others.length > 0) return '';
  return ` along ${side.name}, falling ${usualFall} away from ${side.name}`;
}

/** A height hangs from a benchmark: the site gets one where it has none. */
function heightFix(
  { benchmark }: Site,
  edit: { readonly gap: string; readonly statements: readonly string[] }
): RawFix {
  const title = `Write \`${edit.statements[0]!}\``;
  if (benchmark !== undefined) return { title, edits: [edit] };
  const own = `benchmark ${BENCHMARK}`;
  const edits =
    edit.gap === 'site/ground'
      ? [{ ...edit, statements: [own, ...edit.statements] }]
      : [edit, { gap: 'site/benchmark', statements: [own] }];
  return { title: `${title}, and the benchmark in the site`, edits };
}

const BENCHMARK = 'door-sill';
