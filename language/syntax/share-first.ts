import { otherStatement } from './words.ts';

/** Statements of a job that tell a share. */
const SHARES: ReadonlySet<string> = new Set(['margin', 'markup', 'overhead', 'contingency', 'tax', 'breakage']);

const SHARE_FIRST = /([0-9]+(?:\.[0-9]+)?) ?% +([A-Za-z]+)(?![\w-])/y;

/** `18% margin` at an offset, and what to write instead. */
export function shareFirst(
  text: string,
  offset: number
): { readonly said: string; readonly instead: string } | undefined {
  SHARE_FIRST.lastIndex = offset;
  const [said, number, word] = SHARE_FIRST.exec(text) ?? [];
  if (said === undefined) return undefined;
  const called = word!.toLowerCase();
  const statement = SHARES.has(called) ? called : otherStatement('job', called);
  return statement !== undefined && SHARES.has(statement) ? { said, instead: `${statement} ${number!} %` } : undefined;
}
