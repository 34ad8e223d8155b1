import { CUTTING_TOLERANCE, type Point } from '../../geometry/index.ts';
import { turnedAbout } from '../../geometry/outline.ts';
import type { Corners } from './nest-blank.ts';
import { type Cutting, isOver, type Work } from './nest-cutting.ts';
import { gapOf, type PieceKind } from './nest-kinds.ts';
import { keyOf, type PieceSet, sizeOf } from './nest-sets.ts';
import type { NestingInputs } from './nested.ts';

/** A piece alone at each sixth of a turn: more of them are not put into one hexagon. */
const MOST_PIECES = 6;

/** In metres. */
const ROUNDING = 1e-9;

/** A piece in its place in a hexagon, turned about the middle. */
interface Turned {
  readonly kind: number;
  readonly turn: number;
  readonly corners: Corners;
}

/** Cutting of hexagonal units: pieces keep their places in it, each turned about its middle as often as is needed. */
export function hexagonCutting(inputs: NestingInputs, kinds: readonly PieceKind[], work: Work): Cutting {
  const { unit, finishedEdge } = inputs;
  const gap = gapOf(inputs);
  const middle = { x: unit.length / 2, y: unit.width / 2 };
  const turns = finishedEdge ? [0] : isRegular(unit) ? [0, 60, 120, 180, 240, 300] : [0, 180];
  const known = new Map<string, readonly Turned[] | undefined>();
  const places = kinds.map(({ blank }, kind) =>
    turns.map((turn): Turned => {
      const inUnit = blank.turned[0].map(({ x, y }) => ({ x: x + blank.left, y: y + blank.bottom }));
      return { kind, turn, corners: inUnit.map(point => turnedAbout(point, middle, radians(turn))) };
    })
  );

  /** Pieces placed one after another, each turned in all ways; undefined when there is no way for one of them. */
  const placedAfter = (placed: readonly Turned[], left: readonly number[]): readonly Turned[] | undefined => {
    const [kind, ...others] = left;
    if (kind === undefined) return placed;
    for (const place of places[kind]!) {
      work.spent++;
      const all = [...placed, place];
      const found = canBeParted(all, gap) ? placedAfter(all, others) : undefined;
      if (found) return found;
      if (placed.length === 0 || isOver(work)) return undefined;
    }
    return undefined;
  };

  const placed = (set: PieceSet): readonly Turned[] | undefined => {
    if (sizeOf(set) === 1) return [places[set[0]!.kind]![0]!];
    const share = set.reduce((sum, { kind, count }) => sum + count * kinds[kind]!.share, 0);
    if (share > 1 || sizeOf(set) > MOST_PIECES || isOver(work)) return undefined;
    return placedAfter(
      [],
      set.flatMap(({ kind, count }) => Array.from({ length: count }, () => kind))
    );
  };

  const placesOf = (set: PieceSet): readonly Turned[] | undefined => {
    const key = keyOf(set);
    if (!known.has(key)) known.set(key, placed(set));
    return known.get(key);
  };

  return {
    fits: set => placesOf(set) !== undefined,
    layout: set =>
      (placesOf(set) ?? []).map(({ kind, turn }) => {
        const turned = turnedAbout(middle, { x: 0, y: 0 }, radians(turn));
        return { kind, turn, x: middle.x - turned.x, y: middle.y - turned.y };
      }),
    isExact: () => false
  };
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Whether turning by a sixth brings a hexagon back onto itself, within what cutting is about. */
function isRegular({ length, width }: { length: number; width: number }): boolean {
  return Math.abs(width - (length * Math.sqrt(3)) / 2) <= CUTTING_TOLERANCE;
}

/** Whether straight cuts right through, each along a side of a piece, free pieces from each other. */
function canBeParted(pieces: readonly Turned[], gap: number): boolean {
  if (pieces.length < 2) return true;
  return pieces.some(({ corners }) =>
    corners.some((from, index) => {
      const to = corners[(index + 1) % corners.length]!;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (!(length > ROUNDING)) return false;
      const ahead = ({ x, y }: Point): number =>
        ((x - from.x) * (to.y - from.y) - (y - from.y) * (to.x - from.x)) / length;
      const behind = pieces.filter(piece => piece.corners.every(point => ahead(point) <= ROUNDING));
      const past = pieces.filter(piece => piece.corners.every(point => ahead(point) >= gap - ROUNDING));
      if (past.length === 0 || behind.length + past.length < pieces.length) return false;
      return canBeParted(behind, gap) && canBeParted(past, gap);
    })
  );
}
