import type { ParsedText } from './parse.ts';
import type { Chunk } from './scanner.ts';

/** Finds the chunk that an offset lies in, and whether a fault of the text has broken it. */
export class ChunkIndex {
  private readonly chunks: readonly Chunk[];
  private readonly broken: ReadonlySet<Chunk>;

  constructor({ chunks, faults }: Pick<ParsedText, 'chunks' | 'faults'>) {
    this.chunks = chunks;
    this.broken = new Set(faults.flatMap(fault => this.at(fault.offset) ?? []));
  }

  get isAnyBroken(): boolean {
    return this.broken.size > 0;
  }

  at(offset: number): Chunk | undefined {
    let low = 0;
    let high = this.chunks.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.chunks[middle]!.start <= offset) low = middle;
      else high = middle - 1;
    }
    const chunk = this.chunks[low];
    return chunk !== undefined && offset >= chunk.start && offset < chunk.end ? chunk : undefined;
  }

  isBroken(offset: number): boolean {
    const chunk = this.at(offset);
    return chunk !== undefined && this.broken.has(chunk);
  }
}
