import { FAULTS } from '../findings/fault-list.ts';
import type { Finding, Place } from '../findings/finding.ts';
import type { ChunkIndex } from '../syntax/chunk-index.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import { keyOf } from './keys.ts';
import { namesOf, type SpecText } from './names.ts';

/** The faults that reading a text has found, as findings about the thing that each stands in. */
export function textFaults(text: SpecText, chunks: ChunkIndex): Finding[] {
  const place = placer(text);
  const declared = new Map(namesOf(text).all.map(each => [each.node.$cstNode?.offset, each]));
  return text.parsed.faults.map((fault): Finding => {
    const at = place(fault.offset, fault.length);
    const chunk = chunks.at(fault.offset);
    const thing = chunk && declared.get(chunk.start);
    return {
      id: fault.id,
      family: 'fault',
      severity: FAULTS[fault.id]!.severity,
      message: fault.message,
      target: thing === undefined ? (chunk?.word ?? 'text') : keyOf(thing),
      ...at,
      values: [],
      related: [],
      fixes: fault.fixes.map(({ title, text: instead }) => ({
        title,
        safe: false,
        edits: [{ place: at, text: instead }]
      }))
    };
  });
}

/** Leads offsets of a text to places. */
function placer(text: SpecText): (offset: number, length: number) => Place {
  const source = text.parsed.text;
  const lines = new LineStarts(source);
  return (offset, length) => {
    const from = Math.min(offset, source.length);
    const to = Math.min(offset + length, Math.max(source.length, offset));
    return {
      file: text.file,
      line: lines.lineOf(from) + 1,
      column: lines.columnOf(from) + 1,
      endLine: lines.lineOf(to) + 1,
      endColumn: lines.columnOf(to) + 1
    };
  };
}
