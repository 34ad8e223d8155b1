import type { Parse, ParsedText } from '../syntax/parse.ts';
import { layOut } from './layout.ts';
import { spelling } from './spacing.ts';

/**
 * The canonical form of a job spec. Only white space, line breaks between statements, commas that part statements and
 * the typographic minus change. A text with a fault is returned untouched, for what it means is not known.
 */
export function formatText(text: string, parse: Parse): string {
  const before = parse(text);
  if (before.faults.length > 0) return text;
  const formatted = layOut(before);
  // What a word is depends on where it stands. Should one have changed its role after all, the writer's text is kept.
  return formatted === text || readsAlike(before, parse(formatted)) ? formatted : text;
}

/** Whether two texts have the same words in the same roles, the same comments and as many faults. */
export function readsAlike(before: ParsedText, after: ParsedText): boolean {
  return (
    after.faults.length === before.faults.length &&
    before.tokens.length === after.tokens.length &&
    before.comments.length === after.comments.length &&
    before.tokens.every(
      (token, at) =>
        token.tokenType.name === after.tokens[at]!.tokenType.name && spelling(token) === spelling(after.tokens[at]!)
    ) &&
    before.comments.every((comment, at) => spelling(comment) === spelling(after.comments[at]!))
  );
}
