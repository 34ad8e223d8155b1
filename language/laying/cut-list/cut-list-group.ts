import { narrowestWidth, narrowestWidthOf } from '../../geometry/index.ts';
import type { AlikeCuts } from './cut-list-equal.ts';
import type { PreparedCut } from './cut-list-prepared.ts';
import type { CutGroup, MarkedPiece } from './cut-list.ts';
import { cutsOf } from './marking-out-piece.ts';
import { type Cut, kindOf } from './marking-out.ts';

/** What is told of cuts that are alike. */
export function groupOf({ pattern, members }: AlikeCuts, number: number): CutGroup {
  const { pieces, outline } = pattern;
  const cutsOfPieces = pieces.map(piece => cutsOf(piece, pieces, outline));
  const marked = pieces.map((piece, index): MarkedPiece => {
    const cuts = cutsOfPieces[index]!;
    return {
      ...piece,
      share: piece.area / outline.area,
      narrowest: narrowestWidthOf(piece.outline),
      kind: kindOf(cuts),
      markings: cuts.map(cut => cut.marking)
    };
  });
  const cuts = cutsOfPieces.flat();
  const kind = kindOf(cuts);
  const area = mean(members, cut => cut.area);
  const offcut = kind === 'straight' ? cuts[0]?.offcut : undefined;
  return {
    number,
    unit: pattern.unit,
    count: members.length,
    pieces: marked,
    area,
    share: area / outline.area,
    sawLength: mean(members, cut => cut.sawLength),
    kind,
    straightCuts: straightOnly(cuts) ? cuts.length : 0,
    narrowest: Math.min(...marked.map(piece => piece.narrowest)),
    ...(offcut && { offcutNarrowest: narrowestWidth(offcut) })
  };
}

function straightOnly(cuts: readonly Cut[]): boolean {
  return cuts.every(cut => cut.kind === 'straight');
}

function mean(members: AlikeCuts['members'], of: (cut: PreparedCut) => number): number {
  return members.reduce((sum, { cut }) => sum + of(cut), 0) / members.length;
}
