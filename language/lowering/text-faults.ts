import { FAULTS } from '../findings/fault-list.ts';
import type { Finding } from '../findings/finding.ts';
import type { ChunkIndex } from '../syntax/chunk-index.ts';
import { keyOf } from './keys.ts';
import { namesOf, type SpecText } from './names.ts';
import type { Placer } from './placer.ts';

/** The faults that reading a text has found, as findings about the thing that each stands in. */
export function textFaults(text: SpecText, chunks: ChunkIndex, placer: Placer): Finding[] {
  const declared = new Map(namesOf(text).all.map(each => [each.node.$cstNode?.offset, each]));
  return text.parsed.faults.map((fault): Finding => {
    const at = placer.place(fault.offset, fault.offset + fault.length);
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
      fixes: fault.fixes.map(({ title, edits }) => ({
        title,
        safe: false,
        edits: edits.map(edit => placer.change(edit))
      }))
    };
  });
}
