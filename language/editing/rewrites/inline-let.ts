import { occurrencesIn, type Occurrence } from '../../lowering/occurrences.ts';
import { sumsIn, type SumList, type WrittenSum } from '../../lowering/sums.ts';
import type { Look } from '../../paving.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import { spanOf, type Statement } from '../../syntax/statement-tree.ts';
import { takenOut, type Span } from '../../syntax/text-edit.ts';
import { isBroken, topStatementAt } from './places.ts';
import { covers, rewrite, type Edit, type Rewrite } from './rewrite.ts';
import { listAt, onOneLine } from './written.ts';

/** What a `let` stands for in the place of its name: there alone, or everywhere, and the `let` goes. */
export function inlineLet(look: Look, at: Span): Rewrite[] {
  const { text, project } = look;
  const all = occurrencesIn(text, project).filter(({ kinds }) => kinds.includes('let'));
  const here = all.find(occurrence => covers(occurrence, at));
  const declared = here?.declared;
  if (here === undefined || declared === undefined || declared.text === project.shipped) return [];
  const list = sumsIn(declared.text, project).find(
    ({ holder, declares }) => holder === 'Let' && declares === declared.name
  );
  const value = list?.sums[0];
  const written = value && onOneLine(declared.text.parsed, value);
  if (value?.amount === undefined || written === undefined) return [];
  const lists = sumsIn(text, project);
  const made: Rewrite[] = [];
  if (!here.isDeclaration) {
    const edits = [inPlace(lists, here, value, written)];
    made.push(rewrite(text, { title: `Write ${written} here`, kind: 'inline', keeps: { within: 0 } }, edits));
  }
  const uses = all.filter(other => !other.isDeclaration && other.declared?.node === declared.node);
  const statement = declared.text === text ? declaration(text.parsed, list!) : undefined;
  if (uses.length === 0 || statement === undefined || !isJob(text.parsed)) return made;
  const title = `Write ${written} ${placesInWords(uses.length)} ${here.name}, and take the let out`;
  const edits = [...uses.map(use => inPlace(lists, use, value, written)), withoutStatement(text.parsed, statement)];
  return [...made, rewrite(text, { title, kind: 'inline', keeps: { within: 0 } }, edits)];
}

function placesInWords(count: number): string {
  if (count === 1) return 'in the one place that says';
  return `in ${count === 2 ? 'both' : `all ${count}`} places that say`;
}

/** Other files may lean on what a file without a job declares. */
function isJob({ chunks }: ParsedText): boolean {
  return chunks.some(({ word }) => word === 'job');
}

function inPlace(lists: readonly SumList[], use: Occurrence, value: WrittenSum, written: string): Edit {
  const isCompound = value.form === 'plus' || value.form === 'times' || value.form === 'negative';
  const needsBrackets = isCompound && isOperand(lists, use);
  return { start: use.start, end: use.end, text: needsBrackets ? `(${written})` : written };
}

/** Another sum, or the sign of a size, stands beside it. */
function isOperand(lists: readonly SumList[], { start, end }: Span): boolean {
  const list = listAt(lists, start);
  const isBetween = (sum: WrittenSum): boolean => {
    const part = sum.inside.find(each => each.start <= start && end <= each.end);
    if (part === undefined) return false;
    const isItself = part.start === start && part.end === end;
    return isItself ? sum.form !== 'brackets' : isBetween(part);
  };
  return list?.form === 'size' || list?.sums.some(isBetween) === true;
}

function declaration(parsed: ParsedText, { start }: SumList): Statement | undefined {
  const statement = topStatementAt(parsed, start);
  return statement === undefined || isBroken(parsed, statement) ? undefined : statement;
}

/** With its line; a comment at the end of the line stays, for it says why. */
function withoutStatement(parsed: ParsedText, { first, end }: Statement): Edit {
  const { text, comments, tokens } = parsed;
  const span = spanOf(parsed, first, end);
  const { endLine } = tokens[end - 1]!;
  const comment = comments.find(({ startLine, startOffset }) => startLine === endLine && startOffset >= span.end);
  return comment === undefined
    ? takenOut(text, span.start, span.end)
    : { start: span.start, end: comment.startOffset, text: '' };
}
