import type { Key } from '../job/job.ts';
import type { KeptOut } from '../syntax/generated/ast.ts';
import type { Declared } from './names.ts';

/** The key of what is declared: `area:terrace`, `box:valves`. */
export function keyOf(declared: Declared): Key {
  if (declared.kind === 'kept-out') return `${(declared.node as KeptOut).kind}:${declared.name}`;
  return `${declared.kind}:${declared.name}`;
}
