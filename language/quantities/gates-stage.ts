import type { Gate } from '../job/heights.ts';
import type { Area } from '../job/job.ts';
import { type Clearance, type Swing, swingOf } from '../levels/swing.ts';
import { type Expression, given, leaf, measured, notBelowNought, subtract } from './arithmetic.ts';
import { zOf } from '../job/heights.ts';
import type { Book, Page } from './page.ts';
import { highestFinishAlong, pavedRegion, type SiteArea } from './site-area.ts';
import type { GateQuantities } from './site-contract.ts';

/** A swing over one area. */
interface SwingOver {
  readonly area: Area;
  readonly swing: Swing;
}

/** How gates and doors clear the finish of the areas that they swing over. */
export function gatesOf(gates: readonly Gate[], areas: readonly SiteArea[], book: Book): GateQuantities[] {
  return gates.map((gate, index) => {
    const at = `/gates/${index}`;
    const page = book.page('gate', at);
    const swing = swingNumbers(gate, areas, at, page);
    sillStep(gate, areas, page);
    return { id: gate.key, name: gate.name, kind: gate.kind, ...swing, ...page.numbers };
  });
}

function swingNumbers(
  gate: Gate,
  areas: readonly SiteArea[],
  at: string,
  page: Page<'gate'>
): Pick<GateQuantities, 'leastAt' | 'strikes' | 'overPaving'> {
  if (gate.underside === undefined) return { strikes: false };
  page.repeat('underside', zOf(gate.underside));
  if (gate.clearance !== undefined) page.repeat('wanted', gate.clearance.value);
  const swings = swingsOf(gate, areas);
  const whole = leastOf(swings, ({ swing }) => swing.whole);
  if (whole === undefined) return { strikes: false, overPaving: false };
  const underside = leaf('underside', zOf(gate.underside), 'm', { pointer: `${at}/underside` });
  page.repeat('highestFinish', whole.finish);
  const highest = leaf('highest finish in the swing', whole.finish, 'm', { pointer: `${at}/highestFinish` });
  const clearance = page.put('clearance', subtract(underside, highest));
  const shut = leastOf(swings, ({ swing }) => swing.shut);
  if (shut !== undefined)
    page.put(
      'shutClearance',
      subtract(underside, measured('highest finish under the shut leaf', shut.finish, 'm', gate.key))
    );
  const laid = clearanceAsLaid(swings, underside);
  if (laid !== undefined) page.put('laidClearance', laid);
  if (gate.clearance !== undefined)
    page.put('trim', notBelowNought(subtract(given('clearance wanted', gate.clearance, 'm'), clearance)));
  const strikesAt = swings.flatMap(({ swing }) => swing.strikesAt ?? []);
  if (strikesAt.length > 0) page.repeat('strikesAt', (Math.min(...strikesAt) * 180) / Math.PI);
  return { leastAt: [whole.at.x, whole.at.y], strikes: strikesAt.length > 0, overPaving: true };
}

function swingsOf({ leaf: turning, underside }: Gate, areas: readonly SiteArea[]): SwingOver[] {
  if (turning === undefined || underside === undefined) return [];
  const { hinge, end, length, turn } = turning;
  const shut = { x: end.x - hinge.x, y: end.y - hinge.y };
  const opens = (turn * Math.PI) / 180;
  return areas.flatMap(({ area }) => {
    const surface = area.finish?.surface;
    if (surface === undefined) return [];
    const swing = swingOf(
      { hinge, shut, length: length.value, opens, underside: zOf(underside) },
      surface,
      pavedRegion(area)
    );
    return 'fault' in swing || swing.whole === undefined ? [] : [{ area, swing }];
  });
}

function leastOf(
  swings: readonly SwingOver[],
  clearanceOf: (one: SwingOver) => Clearance | undefined
): Clearance | undefined {
  return swings
    .flatMap(one => clearanceOf(one) ?? [])
    .reduce<Clearance | undefined>(
      (least, next) => (least && least.clearance <= next.clearance ? least : next),
      undefined
    );
}

/** Before the plate has been over them, units stand as high as their bed settles; undefined where none does. */
function clearanceAsLaid(swings: readonly SwingOver[], underside: Expression): Expression | undefined {
  const all = swings.map(({ area, swing }) => {
    const settles = area.layers.find(({ role }) => role === 'bed')?.settles;
    const finish = measured(`highest finish of ${area.name} in the swing`, swing.whole!.finish, 'm', area.key);
    return settles === undefined
      ? { settles: false, left: subtract(underside, finish) }
      : { settles: true, left: subtract(underside, finish, given('settling of the bed', settles, 'm')) };
  });
  if (!all.some(({ settles }) => settles)) return undefined;
  return all.map(({ left }) => left).reduce((least, next) => (least.value <= next.value ? least : next));
}

function sillStep({ key, opening, sill }: Gate, areas: readonly SiteArea[], page: Page<'gate'>): void {
  if (opening === undefined || sill === undefined) return;
  const highest = highestFinishAlong(opening, areas);
  if (highest === undefined) return;
  const height = leaf('height of the sill', zOf(sill), 'm', { key: sill.above.key ?? key });
  page.put(
    'sillStep',
    subtract(height, measured('highest finish along the opening', highest.z, 'm', highest.area.key))
  );
}
