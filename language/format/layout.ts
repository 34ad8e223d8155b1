import type { ParsedText, Token } from '../syntax/parse.ts';
import { meetsOf } from '../syntax/statement-tree.ts';
import { padding, printed, type Line } from './columns.ts';
import { gap, rolesIn, spelling, type Roles } from './spacing.ts';
import { statementsOf, type Statement } from './statements.ts';

export const INDENT = 2;
export const CONTINUED = 4;
/** A block written on one line stays there up to this width. */
const WIDEST_LINE = 100;

/** Where the second column of a statement begins, and the white space before it. */
interface SecondColumn {
  readonly start: number;
  readonly gap: string;
}

const PHRASES: ReadonlySet<string> = new Set(['in', 'out', 'broken']);

export const BLANK_LINE = /\n[^\S\n]*\n/;

/** A text without faults in its canonical form. */
export function layOut(parsed: ParsedText): string {
  return new Layout(parsed).run();
}

class Layout {
  private readonly lines: Line[] = [];
  private readonly text: string;
  private readonly tokens: readonly Token[];
  private readonly roles: Roles;
  private readonly statements: readonly Statement[];
  /** The comments before each token; those at the end of the text stand before the place after the last token. */
  private readonly comments: ReadonlyMap<number, readonly Token[]>;
  /** The blocks that stand on one line. */
  private readonly flatBlocks = new Map<Statement, string>();
  /** White space before the squares of a drawn bond, and before points in rows of heights, by token. */
  private readonly cells = new Map<number, string>();
  /** Up to here the text is laid out. */
  private done = 0;
  /** The number of lines when the block was opened that is being laid out. */
  private begun = 0;
  /** The next line stands apart from the one before. */
  private apart = false;

  constructor(parsed: ParsedText) {
    this.text = parsed.text;
    this.tokens = parsed.tokens;
    this.roles = rolesIn(parsed.root);
    this.statements = statementsOf(parsed);
    this.comments = commentsByToken(parsed);
  }

  run(): string {
    this.findFlatBlocks(this.statements, 0);
    const columns = this.columnsOfThings(this.statements);
    this.statements.forEach((statement, at) => {
      this.apart = this.standsApart(this.statements[at - 1], statement);
      this.placeComments(statement.first, 0);
      this.place(statement, 0, columns[at]);
    });
    this.placeComments(this.tokens.length, 0);
    return printed(this.lines, /\r?\n/.exec(this.text)?.[0] ?? '\n');
  }

  // ---- what stands on one line, what stands apart ----

  private findFlatBlocks(statements: readonly Statement[], indent: number): void {
    for (const statement of statements) {
      const { first, open, inside } = statement;
      if (open === undefined) continue;
      const block = this.flatBlock(statement);
      let lineStart = open;
      while (lineStart > first && !this.breaks(lineStart)) lineStart--;
      const before = indent + (lineStart === first ? 0 : CONTINUED) + this.written(lineStart, open).length + 1;
      if (block !== undefined && before + block.length <= WIDEST_LINE) this.flatBlocks.set(statement, block);
      else this.findFlatBlocks(inside, indent + INDENT);
    }
  }

  /** A block on one line: written so, with nothing in it that needs a line of its own. */
  private flatBlock({ open, end, inside }: Statement): string | undefined {
    for (let at = open! + 1; at < end; at++) if (this.comments.has(at)) return undefined;
    if (inside.length === 0) return '{ }';
    if (this.tokens[open!]!.startLine !== this.tokens[end - 1]!.startLine) return undefined;
    if (inside.some(({ first }, at) => at > 0 && !this.between(first).includes(','))) return undefined;
    const texts: string[] = [];
    for (const statement of inside) {
      const head = this.written(statement.first, statement.open ?? statement.end);
      const block = statement.open === undefined ? '' : this.flatBlock(statement);
      if (block === undefined) return undefined;
      texts.push(block === '' ? head : `${head} ${block}`);
    }
    return `{ ${texts.join(', ')} }`;
  }

  private isTall(statement: Statement): boolean {
    return statement.open !== undefined && !this.flatBlocks.has(statement);
  }

  /** A blank line parts a block of several lines from its neighbours, if none stands between them already. */
  private standsApart(before: Statement | undefined, statement: Statement): boolean {
    if (before === undefined || BLANK_LINE.test(this.between(statement.first))) return false;
    return this.isTall(before) || this.isTall(statement);
  }

  /** Neighbouring lines of one kind: their columns line up. */
  private runsOf(statements: readonly Statement[]): Statement[][] {
    const runs: Statement[][] = [];
    for (const statement of statements) {
      const before = runs.at(-1)?.at(-1);
      if (before !== undefined && this.isSameRun(before, statement)) runs.at(-1)!.push(statement);
      else runs.push([statement]);
    }
    return runs;
  }

  private isSameRun(before: Statement, statement: Statement): boolean {
    return (
      this.tokens[before.first]!.image === this.tokens[statement.first]!.image &&
      !this.isTall(before) &&
      !this.isTall(statement) &&
      !BLANK_LINE.test(this.between(statement.first))
    );
  }

  // ---- columns ----

  private columnsOfThings(statements: readonly Statement[]): (SecondColumn | undefined)[] {
    return this.runsOf(statements).flatMap(run => this.secondColumns(run, ({ first }) => first + 2));
  }

  private columnsWithin(word: string, inside: readonly Statement[]): (SecondColumn | undefined)[] {
    if (word === 'wrong' || word === 'right') return this.columnsOfThings(inside);
    if (word === 'edges') return this.secondColumns(inside, item => meetsOf(this.tokens, item));
    return this.secondColumns(inside, ({ first, end }) => (this.isPhrase(first) ? end : first + 1));
  }

  /** `in use`, `out of use`, `broken out`: what belongs together is not torn apart by a column. */
  private isPhrase(first: number): boolean {
    return PHRASES.has(this.tokens[first]!.tokenType.name);
  }

  private secondColumns(
    statements: readonly Statement[],
    startOf: (statement: Statement) => number
  ): (SecondColumn | undefined)[] {
    const starts = statements.map(statement => {
      const start = Math.min(startOf(statement), statement.open ?? statement.end);
      const none = start === statement.end || this.isTall(statement) || this.isBroken(statement.first, start);
      return none ? undefined : start;
    });
    const widths = starts.map((start, at) =>
      start === undefined ? 0 : this.written(statements[at]!.first, start).length
    );
    const pads = padding(widths);
    return starts.map((start, at) =>
      start === undefined ? undefined : { start, gap: ' '.repeat(pads[at]!) + this.gap(start) }
    );
  }

  /** Below the first point of a row of heights stands the first of the next, and so on. */
  private lineUpSpots(rows: readonly Statement[]): void {
    const spotsOf = ({ first, end }: Statement): number[] => {
      const later = this.tokens.slice(first, end).flatMap(({ startOffset }, at) => {
        return this.roles.nextSpots.has(startOffset) ? [first + at] : [];
      });
      return [first + 1, ...later, end];
    };
    const spots = rows.map(spotsOf);
    const most = Math.max(0, ...spots.map(row => row.length - 1));
    for (let column = 0; column < most - 1; column++) {
      const reaching = spots.filter(row => column + 2 < row.length);
      const pads = padding(reaching.map(row => this.written(row[column]!, row[column + 1]!).length));
      reaching.forEach((row, at) => this.cells.set(row[column + 1]!, '  ' + ' '.repeat(pads[at]!)));
    }
  }

  /** The squares of a bond lie above each other, as on the plan. */
  private lineUpSquares(statements: readonly Statement[]): void {
    const courses = statements.filter(({ first }) => this.tokens[first]!.tokenType.name === 'course');
    const lengthOf = (at: number): number => this.tokens[at]!.image.length;
    const widest = Math.max(0, ...courses.map(({ first, end }) => end - first - 1));
    for (let square = 0; square < widest - 1; square++) {
      const reaching = courses.filter(({ first, end }) => first + 2 + square < end);
      const width = Math.max(...reaching.map(({ first }) => lengthOf(first + 1 + square)));
      for (const { first } of reaching) {
        const at = first + 1 + square;
        this.cells.set(at + 1, ' '.repeat(width - lengthOf(at) + 1));
      }
    }
  }

  private isBroken(first: number, last: number): boolean {
    for (let at = first + 1; at <= last; at++) if (this.breaks(at)) return true;
    return false;
  }

  // ---- lines ----

  private place(statement: Statement, indent: number, column?: SecondColumn): void {
    const { first, open, end } = statement;
    this.newLine(indent, this.blankBefore(this.tokens[first]!));
    for (let at = first; at < (open ?? end); at++) {
      if (at > first && this.breaks(at)) {
        this.placeComments(at, indent + CONTINUED, false);
        this.newLine(indent + CONTINUED, false);
      }
      this.placeWord(at, column);
    }
    if (open !== undefined) this.placeBlock(statement, open, indent, column);
  }

  private placeBlock(statement: Statement, open: number, indent: number, column?: SecondColumn): void {
    const { first, end, inside } = statement;
    if (this.breaks(open)) {
      this.placeComments(open, indent + CONTINUED, false);
      this.newLine(indent, false);
    }
    this.placeWord(open, column);
    const flat = this.flatBlocks.get(statement);
    if (flat !== undefined) {
      this.lines.at(-1)!.text += flat.slice('{'.length);
      this.done = this.tokens[end - 1]!.endOffset! + 1;
      return;
    }
    this.begun = this.lines.length;
    const word = this.tokens[first]!.tokenType.name;
    this.lineUpSquares(inside);
    if (word === 'heights') this.lineUpSpots(inside);
    const columns = this.columnsWithin(word, inside);
    inside.forEach((item, at) => {
      this.placeComments(item.first, indent + INDENT);
      this.place(item, indent + INDENT, columns[at]);
    });
    this.placeComments(end - 1, indent + INDENT);
    this.newLine(indent, false);
    this.placeWord(end - 1);
  }

  private placeWord(at: number, column?: SecondColumn): void {
    const line = this.lines.at(-1)!;
    if (line.text !== '') line.text += column?.start === at ? column.gap : (this.cells.get(at) ?? this.gap(at));
    line.text += spelling(this.tokens[at]!);
    this.done = this.tokens[at]!.endOffset! + 1;
  }

  /** The comments before a token: the first may belong to the line before, the others have lines of their own. */
  private placeComments(at: number, indent: number, mayBeParted = true): void {
    for (const comment of this.comments.get(at) ?? []) {
      if (comment.startLine === this.tokens[at - 1]?.endLine) {
        this.lines.at(-1)!.comment = spelling(comment);
      } else {
        this.newLine(indent, mayBeParted && this.blankBefore(comment));
        this.lines.at(-1)!.text = spelling(comment);
      }
      this.done = comment.endOffset! + 1;
    }
  }

  private newLine(indent: number, blank: boolean): void {
    this.lines.push({ indent, text: '', blank: (blank || this.apart) && this.lines.length > this.begun });
    this.apart = false;
  }

  // ---- the text as it was ----

  private breaks(at: number): boolean {
    if (this.comments.has(at)) return true;
    const token = this.tokens[at]!;
    return token.startLine !== this.tokens[at - 1]!.endLine && token.tokenType.name !== '{';
  }

  private blankBefore(token: Token): boolean {
    return BLANK_LINE.test(this.text.slice(this.done, token.startOffset));
  }

  private between(at: number): string {
    return this.text.slice(this.tokens[at - 1]!.endOffset! + 1, this.tokens[at]!.startOffset);
  }

  private gap(at: number): string {
    return gap(this.tokens[at - 1]!, this.tokens[at]!, this.text, this.roles);
  }

  /** Words on one line, without columns. */
  private written(from: number, to: number): string {
    let text = '';
    for (let at = from; at < to; at++) text += (at === from ? '' : this.gap(at)) + spelling(this.tokens[at]!);
    return text;
  }
}

function commentsByToken({ tokens, comments }: ParsedText): Map<number, Token[]> {
  const byToken = new Map<number, Token[]>();
  let at = 0;
  for (const comment of comments) {
    while (at < tokens.length && tokens[at]!.startOffset < comment.startOffset) at++;
    const before = byToken.get(at);
    if (before === undefined) byToken.set(at, [comment]);
    else before.push(comment);
  }
  return byToken;
}
