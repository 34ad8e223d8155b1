import { type Bounds, meets } from './view.ts';

/** Halved so often: what is smaller than a 16,000th of the plan stands with what is. */
const DEEPEST = 14;

/** Points have no size: more halving would lead past many squares of one point each. */
export const DEEPEST_OF_POINTS = 7;

interface Node<T> {
  readonly left: number;
  readonly bottom: number;
  readonly size: number;
  readonly entries: { readonly item: T; readonly bounds: Bounds; readonly size: number }[];
  readonly parts: (Node<T> | undefined)[];
}

export interface Found<T> {
  readonly items: readonly T[];
  /** Places and items looked at. */
  readonly looked: number;
  /** There were too many: those of the sizes that were too many, and what is smaller, are left out. */
  readonly leftOut: boolean;
}

/**
 * What lies where, large things above small ones: each stands in the square of its own size that its middle lies in. So
 * what is too small to be seen costs nothing, however much of it there is.
 */
export class QuadTree<T> {
  private readonly root: Node<T>;
  private readonly deepest: number;

  constructor([left, bottom, right, top]: Bounds, deepest = DEEPEST) {
    this.deepest = deepest;
    this.root = nodeOf(left, bottom, Math.max(right - left, top - bottom, 1));
  }

  add(item: T, bounds: Bounds): void {
    const size = Math.max(bounds[2] - bounds[0], bounds[3] - bounds[1]);
    const x = (bounds[0] + bounds[2]) / 2;
    const y = (bounds[1] + bounds[3]) / 2;
    let node = this.root;
    for (let depth = 0; depth < this.deepest && size <= node.size / 2; depth++) {
      const half = node.size / 2;
      const [right, up] = [x >= node.left + half ? 1 : 0, y >= node.bottom + half ? 1 : 0];
      const part = right + 2 * up;
      node = node.parts[part] ??= nodeOf(node.left + right * half, node.bottom + up * half, half);
    }
    node.entries.push({ item, bounds, size });
  }

  /** What meets the bounds and is no smaller than that, at most so many. */
  find(bounds: Bounds, smallest: number, most: number): Found<T> {
    const items: T[] = [];
    let looked = 0;
    let level: Node<T>[] = [this.root];
    while (level.length > 0) {
      const before = items.length;
      const next: Node<T>[] = [];
      for (const node of level) {
        looked++;
        if (node.size < smallest || !mayMeet(node, bounds)) continue;
        for (const entry of node.entries) {
          looked++;
          if (entry.size >= smallest && meets(entry.bounds, bounds)) items.push(entry.item);
          if (items.length > most) return { items: items.slice(0, before), looked, leftOut: true };
        }
        for (const part of node.parts) if (part !== undefined) next.push(part);
        if (next.length > 2 * most) return { items: items.slice(0, before), looked, leftOut: true };
      }
      level = next;
    }
    return { items, looked, leftOut: false };
  }
}

function nodeOf<T>(left: number, bottom: number, size: number): Node<T> {
  return { left, bottom, size, entries: [], parts: [] };
}

/** What stands in a square reaches at most half its size over its edge. */
function mayMeet<T>({ left, bottom, size }: Node<T>, bounds: Bounds): boolean {
  const over = size / 2;
  return meets([left - over, bottom - over, left + size + over, bottom + size + over], bounds);
}
