import { ChunkIndex } from './chunk-index.ts';
import type { Chunk, TextFault } from './scanner.ts';
import { applied, type TextFix } from './text-edit.ts';

/** Each trial reads a chunk once more: of a text with so many faults a person mends the first ones first. */
const MOST_TRIALS = 20;

/** Nobody writes an area so long. */
const LONGEST_TRIED = 20_000;

/** Leaves to a fault the fixes that really mend something: what is meant by half a statement can only be guessed. */
export class Trials {
  private readonly text: string;
  private readonly chunks: readonly Chunk[];
  private readonly index: ChunkIndex;
  private readonly faultyLines: (text: string) => number;
  private readonly before = new Map<Chunk, number>();
  private left = MOST_TRIALS;

  constructor(text: string, chunks: readonly Chunk[], faultyLines: (text: string) => number) {
    this.text = text;
    this.chunks = chunks;
    this.index = new ChunkIndex({ chunks, faults: [] });
    this.faultyLines = faultyLines;
  }

  tried(fault: TextFault): TextFault {
    const chunk = this.index.at(fault.offset);
    if (fault.fixes.length === 0 || chunk === undefined) return fault;
    const end = this.chunks[this.chunks.indexOf(chunk) + 1]?.start ?? this.text.length;
    if (end - chunk.start > LONGEST_TRIED) return { ...fault, fixes: [] };
    return { ...fault, fixes: fault.fixes.filter(fix => this.left-- > 0 && this.mends(fix, chunk, end)) };
  }

  private mends({ edits }: TextFix, chunk: Chunk, end: number): boolean {
    const inChunk = edits.map(edit => ({ ...edit, start: edit.start - chunk.start, end: edit.end - chunk.start }));
    const text = this.text.slice(chunk.start, end);
    const before = this.before.get(chunk) ?? this.faultyLines(text);
    this.before.set(chunk, before);
    return this.faultyLines(applied(text, inChunk)) < before;
  }
}
