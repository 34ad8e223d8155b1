import { GrammarUtils, type AstNode } from 'langium';
import { beginsLine, endOfLine, indentAt, lineBreakOf } from '../syntax/text-edit.ts';
import type { SpecText } from './names.ts';

/** Where a statement that is not said can be written, by offsets, and what has to stand around it. */
export interface GapInText {
  readonly start: number;
  readonly end: number;
  readonly before: string;
  /** Between two statements that are written there at once. */
  readonly between: string;
  readonly after: string;
  /** Where the second column of its neighbours begins; 0 where nothing lines up. */
  readonly column: number;
}

/** How the statements of a block are written. */
export interface BlockForm {
  /** Commas may part them. */
  readonly commas: boolean;
  /** What the second column begins with, where it is not the second word. */
  readonly secondColumn?: 'meets';
}

const INDENT = '  ';

/** A gap in the block of a sound node, behind one of its statements, or at its start. */
export function gapIn(
  text: SpecText,
  node: AstNode & { readonly items: readonly AstNode[] },
  behind: AstNode | undefined,
  { commas, secondColumn }: BlockForm
): GapInText | undefined {
  const source = text.parsed.text;
  const open = GrammarUtils.findNodeForKeyword(node.$cstNode, '{')?.end;
  if (open === undefined || node.$cstNode === undefined) return undefined;
  const at = behind?.$cstNode?.end ?? open;
  if (commas && !source.slice(open, node.$cstNode.end).includes('\n'))
    return behind === undefined ? startOfOneLine(source, open, node.items.length === 0) : inList(at);
  const outer = indentAt(source, node.$cstNode.offset);
  const model = [behind, ...node.items].find(
    item => item?.$cstNode !== undefined && beginsLine(source, item.$cstNode.offset)
  );
  const indent = model?.$cstNode === undefined ? outer + INDENT : indentAt(source, model.$cstNode.offset);
  const newLine = lineBreakOf(source) + indent;
  const column = columnOf(source, model, secondColumn);
  const end = endOfLine(source, at);
  if (/^\s*,?\s*(?:\/\/.*)?$/.test(source.slice(at, end)))
    return { start: end, end, before: newLine, between: newLine, after: '', column };
  if (commas && behind !== undefined) return inList(at);
  const space = /^[ \t]*/.exec(source.slice(at, end))![0].length;
  const isLast = source[at + space] === '}';
  return {
    start: at,
    end: at + space,
    before: newLine,
    between: newLine,
    after: isLast ? lineBreakOf(source) + outer : newLine,
    column
  };
}

function inList(at: number): GapInText {
  return { start: at, end: at, before: ', ', between: ', ', after: '', column: 0 };
}

function startOfOneLine(source: string, open: number, isEmpty: boolean): GapInText {
  const space = /^[ \t]*/.exec(source.slice(open))![0].length;
  return { start: open, end: open + space, before: ' ', between: ', ', after: isEmpty ? ' ' : ', ', column: 0 };
}

function columnOf(source: string, model: AstNode | undefined, secondColumn: BlockForm['secondColumn']): number {
  if (model?.$cstNode === undefined) return 0;
  const { offset } = model.$cstNode;
  const line = source.slice(offset, endOfLine(source, offset));
  const first = secondColumn === undefined ? /^\S+[ \t]+(?=\S)/ : /^.*?[ \t](?=meets\b)/;
  return first.exec(line)?.[0].length ?? 0;
}
