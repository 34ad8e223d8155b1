import { listed } from '../../findings/listed.ts';
import type { Key } from '../../job/job.ts';
import { nameIn } from '../../job/key-names.ts';
import type { CutList } from '../../laying/cut-list/cut-list.ts';
import type { BoundMethod, CuttingPattern } from '../../laying/nesting/nested.ts';
import type { NestedPiece, UnitsForCuts } from '../../quantities/nesting-stage.ts';
import { SENTENCE_WIDTH, wrapped } from './wrapped.ts';

/** How a least number of units is known. */
const BOUNDS: Readonly<Record<BoundMethod, string>> = {
  area: 'by the area of the pieces',
  saw: "by the area of the pieces and of the saw's cuts",
  counting: 'by how many pieces of a size one unit gives'
};

/** The cut lists that a plan is for. */
export interface PlannedLists {
  readonly lists: readonly CutList[];
  /** Their areas, where several are planned together. */
  readonly areas?: readonly Key[];
}

/** What the pieces of one kind of unit come out of: how many units, whether fewer would do, and how each is cut. */
export function cuttingPlanText(unit: string, planned: UnitsForCuts, lists: PlannedLists): string[] {
  const { plan, pieces } = planned;
  const first = ({ pieces: own }: CuttingPattern): number => Math.min(...own.map(({ group }) => group));
  const ways = new Map<string, number>();
  for (const pattern of [...plan].sort((left, right) => first(left) - first(right))) {
    const out = outOfUnit(pattern, pieces, lists);
    ways.set(out, (ways.get(out) ?? 0) + pattern.units);
  }
  const lines = [...ways].map(([out, units]) =>
    units === 1 ? `out of 1 unit: ${out}` : `out of each of ${units} units: ${out}`
  );
  return [
    ...wrapped(headline(unit, planned), SENTENCE_WIDTH),
    ...lines.flatMap(line => wrapped(line, SENTENCE_WIDTH - 2, '  ').map(part => `  ${part}`))
  ];
}

/** `block: 12 units for 20 pieces, as few as can be by the area of the pieces.` */
function headline(unit: string, { used, lowerBound, boundBy, proven, plan }: UnitsForCuts): string {
  const pieces = plan.reduce((sum, pattern) => sum + pattern.units * pattern.pieces.length, 0);
  const taken = `${unit}: ${counted(used, 'unit')} for ${counted(pieces, 'piece')}`;
  if (!proven) return `${taken}. Fewer are not ruled out: at least ${lowerBound}, ${BOUNDS[boundBy]}.`;
  if (used > lowerBound) return `${taken}, as few as can be: every other way has been tried.`;
  return `${taken}, as few as can be, ${BOUNDS[boundBy]}.`;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

/** `2 of no. 3 and 1 of no. 5`; of several areas `2 of no. 3 in terrace; 1 of no. 1 in path`. */
function outOfUnit({ pieces }: CuttingPattern, all: readonly NestedPiece[], { lists, areas }: PlannedLists): string {
  const counts = new Map<number, number>();
  for (const { group } of pieces) counts.set(group, (counts.get(group) ?? 0) + 1);
  const inOrder = [...counts]
    .sort(([left], [right]) => left - right)
    .map(([group, count]) => ({ count, ...all[group]! }));
  const byArea = lists.flatMap((list, index) => {
    const own = inOrder.filter(piece => piece.list === index);
    if (own.length === 0) return [];
    const where = areas === undefined ? '' : ` in ${nameIn(areas[index]!)}`;
    return [`${listed(own.map(piece => `${piece.count} of ${pieceText(piece, list)}`))}${where}`];
  });
  return byArea.join('; ');
}

/** `no. 3`, `no. 7 (piece 2)` */
function pieceText({ number, piece }: NestedPiece, { groups }: CutList): string {
  const pieces = groups.find(group => group.number === number)!.pieces.length;
  return pieces === 1 ? `no. ${number}` : `no. ${number} (piece ${piece + 1})`;
}
