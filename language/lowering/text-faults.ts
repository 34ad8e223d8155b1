import { FAULTS } from '../findings/fault-list.ts';
import type { Finding } from '../findings/finding.ts';
import type { ChunkIndex } from '../syntax/chunk-index.ts';
import { isPrice } from '../syntax/generated/ast.ts';
import { keyOf, keyOfPrice } from './keys.ts';
import { namesOf, type SpecText } from './names.ts';
import type { Placer } from './placer.ts';

/** The faults that reading a text has found, as findings about the thing that each stands in. */
export function textFaults(text: SpecText, chunks: ChunkIndex, placer: Placer): Finding[] {
  const keys = new Map(namesOf(text).all.map(each => [each.node.$cstNode?.offset, keyOf(each)]));
  for (const node of text.parsed.root.elements) if (isPrice(node)) keys.set(node.$cstNode?.offset, keyOfPrice(node));
  return text.parsed.faults.map((fault): Finding => {
    const at = placer.place(fault.offset, fault.offset + fault.length);
    const chunk = chunks.at(fault.offset);
    return {
      id: fault.id,
      family: 'fault',
      severity: FAULTS[fault.id]!.severity,
      message: fault.message,
      target: (chunk && keys.get(chunk.start)) ?? chunk?.word ?? 'text',
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
