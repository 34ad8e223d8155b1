import type { IToken, TokenType, TokenTypeDictionary } from 'chevrotain';
import { AMBIGUOUS_MEASURES, MEASURES } from '../measures/measures.ts';
import { MOST_CHARACTERS, MOST_NESTED, MOST_TERMS } from './limits.ts';
import { CURRENCY_SIGN, currencyFirst, isCurrencyBefore } from './currency-first.ts';
import { shareFirst } from './share-first.ts';
import { nearest } from './nearest.ts';
import { oddDateAt } from './odd-dates.ts';
import {
  SPACE,
  COMMENT,
  TEXT,
  OPEN_TEXT,
  CURLY_TEXT,
  NUMBER,
  COMMA_NUMBER,
  DATE,
  NAME,
  SQUARE_OR_CUBIC,
  MEASURE_WORD,
  MEASURE_SIGN,
  SIZE_SIGN,
  COMMA_WORD,
  NAME_GOES_ON,
  POINT_GOES_ON,
  TAPE_HYPHEN,
  MEASURE_HYPHEN,
  ABBREVIATION_STOP,
  LINE_INDENT,
  BRACES_AND_TEXTS,
  FEET,
  MINUS_SIGNS,
  TOP_LINE,
  TOP_LINE_AFTER_RULE,
  TOP_LINE_AFTER_VARIANT
} from './patterns.ts';
import { endOfLine, indentAt, lineBreakOf, takenOut, writes, type TextEdit, type TextFix } from './text-edit.ts';
import {
  BLOCK_WORDS,
  BLOCKS,
  otherStatement,
  saidElsewhere,
  TOP_WORDS,
  WALL_MARKS,
  type BlockName,
  type Statement
} from './words.ts';

/** A fault of the text itself, by offsets. */
export interface TextFault {
  readonly id: string;
  readonly message: string;
  readonly offset: number;
  readonly length: number;
  readonly fixes: readonly TextFix[];
}

/** One top-level statement or block with all that belongs to it: an error in it breaks it, and nothing else. */
export interface Chunk {
  readonly start: number;
  readonly end: number;
  /** The word it begins with. */
  readonly word: string;
  /** Index of its first token. */
  readonly firstToken: number;
  /** Too much for the parser: only its word and name were kept. */
  readonly dropped: boolean;
}

/** Where a statement begins: its first word, the block that it stands in, and the one that its brace opens. */
export interface StatementStart {
  readonly token: number;
  readonly block: BlockName;
  readonly opens?: BlockName;
}

export interface Scan {
  readonly tokens: IToken[];
  readonly statements: StatementStart[];
  readonly comments: IToken[];
  readonly faults: TextFault[];
  readonly chunks: Chunk[];
}

/** Blocks that hold lines which begin with top-level words. */
const TOP_LINES_AFTER: Readonly<Record<string, RegExp>> = {
  rule: TOP_LINE_AFTER_RULE,
  variant: TOP_LINE_AFTER_VARIANT
};

/** An open brace. */
interface Frame {
  readonly name: BlockName | 'unknown';
  readonly brace: IToken;
  /** The indent of its line. */
  readonly indent: number;
  /** Its own fault, and what would mend that: how it ends is known when it does. */
  readonly odd?: { readonly fault: { fixes: readonly TextFix[] }; readonly mending: TextEdit[] };
}

/**
 * Reads a text into tokens, one pass. It decides which words are keywords (words.ts), closes a brace that was never
 * closed where the next top-level word stands, drops statements that begin with no word of their block, and cuts the
 * text into chunks, so that a fault stays where it is.
 */
export function scan(text: string, types: TokenTypeDictionary): Scan {
  return new Scanner(text, types).run();
}

class Scanner {
  private readonly tokens: IToken[] = [];
  private readonly statements: StatementStart[] = [];
  private readonly comments: IToken[] = [];
  private readonly faults: TextFault[] = [];
  private readonly chunks: { start: number; end: number; word: string; firstToken: number; dropped: boolean }[] = [];
  private readonly frames: Frame[] = [];
  private offset = 0;
  private line = 1;
  private lineStart = 0;
  /** Words that are keywords in the statement that is being read; undefined between statements. */
  private clauses: ReadonlySet<string> = new Set();
  private opens: BlockName | undefined;
  private sizes = false;
  private counts = false;
  private rows = false;
  /** The last line of which something was read. */
  private busyLine = 0;
  /** The end of the last word or sign, read or passed over. */
  private busyEnd = 0;
  /** The end of the last text that was not closed: a brace behind it would be read as part of it. */
  private openTextEnd = -1;
  /** Nothing is read up to the end of this line. */
  private skippedLine = 0;
  private nested = 0;
  private terms = 0;
  private chunkTooDeep = false;

  /** By the start of each chunk: it has not as many { as }. */
  private readonly unpaired = new Map<number, boolean>();
  /** The end of the last mark of a tape that was passed over. */
  private tapeMarkEnd = -1;
  /** The last block that was closed at the top, and where. */
  private closed: { name: BlockName; offset: number } | undefined;
  /** What stands at the top belongs into a block that was closed too early: that has been told. */
  private orphansOf: BlockName | undefined;
  /** What would mend the brace that was closed too early, until the one comes that it should have been. */
  private earlyBrace: TextEdit[] | undefined;
  private readonly text: string;
  private readonly types: TokenTypeDictionary;

  constructor(text: string, types: TokenTypeDictionary) {
    this.text = text;
    this.types = types;
  }

  run(): Scan {
    if (this.text.length > MOST_CHARACTERS) {
      this.fault(
        'text-too-long',
        `This file has ${this.text.length.toLocaleString('en')} characters; at most ${MOST_CHARACTERS.toLocaleString('en')} are read. Part it into several files with \`use\`.`,
        0,
        1
      );
    } else {
      while (this.offset < this.text.length) this.next();
      this.closeOpenBraces(undefined);
      this.endOrphans();
    }
    this.endChunk(this.text.length);
    return {
      tokens: this.tokens,
      statements: this.statements,
      comments: this.comments,
      faults: this.faults,
      chunks: this.chunks
    };
  }

  private next(): void {
    const space = this.match(SPACE);
    if (space !== undefined) return this.advance(space);
    const comment = this.match(COMMENT);
    if (comment !== undefined) {
      this.comments.push(this.token('COMMENT', comment));
      return this.advance(comment);
    }
    const first = this.busyLine !== this.line;
    const word = this.match(NAME);
    const isBrace = this.text[this.offset] === '{' || this.text[this.offset] === '}';
    const topWord = first && word !== undefined && TOP_WORDS.has(word);
    if (!isBrace && !topWord && (this.skippedLine === this.line || this.current() === 'unknown'))
      return this.advance(word ?? this.match(TEXT) ?? this.text[this.offset]!);
    if ((first || this.startsStatement()) && this.shareFirst()) return;
    if (this.oddDate()) return;
    if (this.afterNumber() && !this.counts && this.measureOrSizeSign()) return;
    if (word !== undefined) return this.word(word, first);
    if (this.number(first)) return;
    const string = this.match(TEXT);
    if (string !== undefined) return this.emit('STRING', string);
    const openText = this.match(OPEN_TEXT);
    if (openText !== undefined) {
      this.openTextEnd = this.offset + openText.length;
      this.fault(
        'text-not-closed',
        'This text in quotes has no closing quote on its line.',
        this.offset,
        openText.length,
        [this.closingQuote(openText)]
      );
      return this.emit('STRING', openText);
    }
    const curly = this.match(CURLY_TEXT);
    if (curly !== undefined) {
      const straight = `"${curly.slice(1, -1)}"`;
      const message = `Curly quotes can't stand here. Write straight ones: \`${straight}\`.`;
      const fixes = [
        { title: 'Write straight quotes', edits: writes([straight], this.offset, curly.length)[0]!.edits }
      ];
      this.fault('odd-character', message, this.offset, curly.length, fixes);
      return this.emit('STRING', curly);
    }
    // A sign beyond the first plane of letters is two code units long.
    this.sign(String.fromCodePoint(this.text.codePointAt(this.offset)!));
  }

  /** Behind the last word of a text that was not closed, or in the place of a curly quote there. */
  private closingQuote(openText: string): TextFix {
    const words = openText.replace(/[\s}]*(?:\/\/.*)?$/, '');
    const end = this.offset + words.length;
    const isCurly = /[”»]$/.test(words);
    return { title: 'Write the closing quote', edits: [{ start: isCurly ? end - 1 : end, end, text: '"' }] };
  }

  // ---- words ----

  private word(word: string, first: boolean): void {
    const block = this.current();
    if (first && TOP_WORDS.has(word) && !this.isNameHere(word, block)) {
      const variant = this.variantAround(word);
      this.closeOpenBraces(word, variant + 1);
      return variant < 0 ? this.topWord(word) : this.word(word, first);
    }
    if (block === 'unknown') return this.advance(word);
    if (first && this.braceIsMissing(word, block)) {
      this.openMissingBrace();
      return this.word(word, first);
    }
    if (block === 'spec') {
      if ((first && !this.continues(word)) || this.tokens.at(-1)?.image === '}') return this.topWord(word);
    } else if (first || this.startsStatement()) {
      const known = BLOCKS[block];
      if (known.lines !== undefined) {
        this.startStatement(known.lines);
        if (known.lines.rows && !this.clauses.has(word)) return this.emit('THING', word);
      } else if (Object.hasOwn(known.statements, word)) {
        this.startStatement(known.statements[word]!);
        return this.emit(word, word);
      } else if (!(first && this.continues(word))) {
        return this.unknownStatement(word, Object.keys(known.statements), block);
      }
    }
    if (OF_MONEY.has(block) && isCurrencyBefore(this.text, this.offset, word)) return this.currencyFirst(word);
    if (word === 'per' && this.afterMeasure()) return this.emit('per', word);
    if (/^(?:x|by)$/i.test(word) && this.sizes && this.afterOperand()) return this.emit('BY', word);
    if (this.isPointsName(word)) return this.emit('ID', word);
    const isClause =
      this.clauses.has(word) &&
      word in this.types &&
      (!BEHIND_VALUES.has(word) || this.afterOperand()) &&
      !this.isBenchmarkHere(word);
    this.emit(isClause ? word : 'ID', word);
  }

  /** `18% margin`: the word stands before its share. */
  private shareFirst(): boolean {
    if (this.current() !== 'job') return false;
    const found = shareFirst(this.text, this.offset);
    if (found === undefined) return false;
    const { said, instead } = found;
    const message = `Write the word first: \`${instead}\`.`;
    this.fault('half-statement', message, this.offset, said.length, writes([instead], this.offset, said.length));
    this.skippedLine = this.line;
    this.opens = undefined;
    this.advance(said);
    return true;
  }

  /** `labour GBP 24 per hour` */
  private currencyFirst(word: string): void {
    const { example, fixes } = currencyFirst(this.text, this.offset, word);
    const message = `\`${word}\` can't stand here.${currencyHelp(example)}`;
    this.fault('half-statement', message, this.offset, word.length, fixes);
    this.advance(word);
  }

  /** `point left at (0, 0)`: a word of the statement in the place of its name. */
  private isPointsName(word: string): boolean {
    if (this.tokens.at(-1)?.tokenType.name !== 'point') return false;
    POINT_GOES_ON.lastIndex = this.offset + word.length;
    return POINT_GOES_ON.test(this.text);
  }

  /** A height hangs from a benchmark, which may be called as a mark on a wall is: `20 mm below damp-course`. */
  private isBenchmarkHere(word: string): boolean {
    return WALL_MARKS.includes(word) && ['below', 'above', 'with'].includes(this.tokens.at(-1)?.image ?? '');
  }

  /**
   * The open variant that a word belongs to which can also begin something of its own. Where braces don't pair, it is set
   * in deeper than the line of the variant's brace, or stands on that line. Less than nought if there is none.
   */
  private variantAround(word: string): number {
    if (!Object.hasOwn(BLOCKS.variant.statements, word)) return -1;
    const indent = this.indentOf(this.lineStart);
    return this.frames.findLastIndex(
      ({ name, brace, indent: own }) =>
        name === 'variant' && (indent > own || brace.startLine === this.line || !this.isUnpaired())
    );
  }

  /** The block before was never opened, and what stands here belongs into it: by its word, or by its indent. */
  private braceIsMissing(word: string, block: BlockName): boolean {
    if (this.opens === undefined) return false;
    const { lines, statements } = BLOCKS[this.opens];
    if (lines !== undefined) return !Object.hasOwn(BLOCKS[block].statements, word);
    if (Object.hasOwn(statements, word)) return !this.clauses.has(word) || this.isSaid(word);
    // A line set in may also go on: `pit tree`, and on the next `in yard {`.
    return block === 'spec' && this.indentOf(this.lineStart) > 0 && !this.clauses.has(word);
  }

  /** `pit tree`, and on the next line `in yard {`: the first `in` is a word of the statement that is being read. */
  private isSaid(word: string): boolean {
    return this.tokens.slice(this.statements.at(-1)!.token).some(({ tokenType }) => tokenType.name === word);
  }

  private openMissingBrace(): void {
    const last = this.tokens.at(-1)!;
    const end = last.endOffset! + 1;
    const mending: TextEdit[] = [{ start: end, end, text: ' {' }];
    const message = `A { is missing after \`${last.image}\`.`;
    const fault = this.fault('brace-missing', message, last.startOffset, last.image.length, [
      { title: 'Write `{`', edits: mending }
    ]);
    const brace = this.inserted('{', last);
    this.tokens.push(brace);
    const indent = this.indentOf(last.startOffset - last.startColumn! + 1);
    this.frames.push({ name: this.opens!, brace, indent, odd: { fault, mending } });
    this.opens = undefined;
    this.clauses = NO_WORDS;
  }

  private topWord(word: string): void {
    this.endChunk(this.offset);
    this.chunks.push({ start: this.offset, end: this.offset, word, firstToken: this.tokens.length, dropped: false });
    const statement = Object.hasOwn(BLOCKS.spec.statements, word) ? BLOCKS.spec.statements[word]! : undefined;
    if (statement === undefined) return this.orphan(word);
    this.endOrphans();
    this.closed = undefined;
    this.startStatement(statement);
    this.emit(word, word);
  }

  /** No top-level word: a statement of the block before, if that was closed too early. */
  private orphan(word: string): void {
    const belongs = (name: BlockName | undefined): boolean =>
      name !== undefined && Object.hasOwn(BLOCKS[name].statements, word);
    if (this.closed !== undefined && this.orphansOf === undefined && belongs(this.closed.name)) {
      const message = `This } stands too early: \`${word}\` in line ${this.line} belongs inside.`;
      const { offset, name } = this.closed;
      this.earlyBrace = [takenOut(this.text, offset, offset + 1)];
      const fixes = [{ title: 'Take it out here, and close the block behind it', edits: this.earlyBrace }];
      this.fault('brace-closes-nothing', message, offset, 1, fixes);
      this.orphansOf = name;
    }
    if (!belongs(this.orphansOf)) return this.unknownStatement(word, TOP_WORDS, 'spec');
    this.skippedLine = this.line;
    this.opens = undefined;
    this.advance(word);
  }

  /** What belonged to a block that was closed too early is at its end: the brace has to stand there, if none does. */
  private endOrphans(): void {
    this.earlyBrace?.push(this.closingLine(indentAt(this.text, this.closed!.offset)));
    this.earlyBrace = undefined;
    this.orphansOf = undefined;
  }

  private unknownStatement(word: string, known: Iterable<string>, block: BlockName): void {
    const elsewhere = saidElsewhere(block, word);
    const near = elsewhere === undefined ? (otherStatement(block, word) ?? nearest(word, known)) : undefined;
    const place = block === 'spec' ? 'begins nothing in a job spec' : `is no statement of ${BLOCK_WORDS[block]}`;
    const one = near === undefined ? `Write one of: ${[...known].join(', ')}.` : `Did you mean \`${near}\`?`;
    const instead = elsewhere ?? one;
    this.fault(
      'unknown-statement',
      `\`${word}\` ${place}. ${instead}`,
      this.offset,
      word.length,
      near === undefined ? this.asComment() : writes([near], this.offset, word.length)
    );
    this.skippedLine = this.line;
    this.opens = undefined;
    this.advance(word);
  }

  /** A line of one's own words may stand as a comment, if nothing else stands on it. */
  private asComment(): TextFix[] {
    const line = this.text.slice(this.lineStart, endOfLine(this.text, this.offset));
    if (this.text.slice(this.lineStart, this.offset).trim() !== '' || /[{}]/.test(line)) return [];
    return [{ title: 'Make it a comment', edits: [{ start: this.offset, end: this.offset, text: '// ' }] }];
  }

  private startStatement({ clauses, opens, sizes, counts, rows }: Statement): void {
    this.clauses = new Set(clauses);
    this.opens = opens;
    this.sizes = sizes ?? false;
    this.counts = counts ?? false;
    this.rows = rows ?? false;
    this.terms = 0;
    this.nested = 0;
    const block = this.current() as BlockName;
    this.statements.push({ token: this.tokens.length, block, ...(opens === undefined ? {} : { opens }) });
  }

  /** A statement may begin on a line of its own, after a brace, or after a comma where the block allows it. */
  private startsStatement(): boolean {
    const before = this.tokens.at(-1);
    return before === undefined || before.image === '{' || before.image === '}' || before.image === '';
  }

  /** A line that goes on with the statement before: it begins with one of that statement's words. */
  private continues(word: string): boolean {
    const before = this.tokens.at(-1)?.image;
    return (
      this.clauses.has(word) || before === ',' || before === '+' || before === '*' || before === '/' || before === '='
    );
  }

  /** A point of one's own may be called like a top-level word: `box to area meets lawn`. */
  private isNameHere(word: string, block: Frame['name']): boolean {
    if (block === 'unknown' || block === 'spec') return false;
    if (block === 'variant') return this.variantAround(word) === this.frames.length - 1;
    if (BLOCKS[block].lines === undefined) return Object.hasOwn(BLOCKS[block].statements, word);
    NAME_GOES_ON.lastIndex = this.offset + word.length;
    return NAME_GOES_ON.test(this.text);
  }

  // ---- numbers and measures ----

  /** `until 30/6/2027`, `prices on 1/3/2026`: a day in another form than year, month and day with hyphens. */
  private oddDate(): boolean {
    const before = this.tokens.at(-1)?.tokenType.name ?? '';
    if (!BEFORE_DAYS.has(before) || this.match(DATE) !== undefined) return false;
    const date = oddDateAt(this.text, this.offset);
    if (date === undefined) return false;
    const { written, days } = date;
    const such =
      days.length === 0
        ? `, such as \`${before} 2027-06-30\``
        : `: ${days.map(day => `\`${before} ${day}\``).join(' or ')}`;
    this.fault(
      'half-statement',
      `\`${written}\` can't stand here. Write year, month and day with hyphens${such}.`,
      this.offset,
      written.length,
      writes(days, this.offset, written.length)
    );
    this.emit('DATE', written);
    return true;
  }

  private number(first: boolean): boolean {
    const date = this.match(DATE);
    if (date !== undefined) {
      const block = this.current();
      const lines = block === 'unknown' ? undefined : BLOCKS[block].lines;
      if (lines !== undefined && (first || this.startsStatement())) this.startStatement(lines);
      this.emit('DATE', date);
      return true;
    }
    const comma = this.match(COMMA_NUMBER);
    if (comma !== undefined) {
      // `1.200,5`: the dot parts thousands, the comma the decimals.
      const pointed = comma
        .replace(/\./g, comma.indexOf('.') < comma.indexOf(',') ? '' : '.')
        .replace(/,(?=[^,]*$)/, '.')
        .replace(/,/g, '');
      // `2,150` may well be two thousand one hundred and fifty.
      const isOne = /^[0-9]+(?:\.[0-9]+)?$/.test(pointed);
      const thousands = /^[0-9]{1,3}(?:,[0-9]{3})+$/.test(comma) ? [comma.replace(/,/g, '')] : [];
      const readings = [...thousands, ...(isOne ? [pointed] : [])];
      // Inside brackets a pair is meant far more often.
      const pair = this.nested > 0 && comma.split(',').length === 2 ? [comma.replace(',', ', ')] : [];
      const one = readings.map(reading => `\`${reading}\``).join(' or ');
      const several = pair.length === 0 ? 'for several put a space after each comma' : `\`${pair[0]!}\` for two`;
      this.fault(
        'comma-in-number',
        readings.length === 0
          ? `\`${comma}\` is no number. Write ${pair.length === 0 ? 'each with a space after its comma' : `\`${pair[0]!}\``}.`
          : `\`${comma}\` could be one number or several. Write ${one} for one; ${several}.`,
        this.offset,
        comma.length,
        writes([...pair, ...readings], this.offset, comma.length)
      );
      this.emit('NUMBER', comma);
      return true;
    }
    const number = this.match(NUMBER);
    const before = this.tokens.at(-1);
    if (number?.startsWith('.') && before?.tokenType.name === 'MEASURE' && before.endOffset === this.offset - 1) {
      const written = `${before.image}${number}`;
      const message = `In \`${written}\` the point could end a word or begin a decimal. Write \`${before.image} ${number.slice(1)}\` or \`${before.image} 0${number}\`.`;
      this.fault('odd-character', message, this.offset, 1, [
        ...writes([`${before.image} ${number.slice(1)}`], before.startOffset, written.length),
        ...writes([`${before.image} 0${number}`], before.startOffset, written.length)
      ]);
    }
    if (number !== undefined) this.emit('NUMBER', number);
    return number !== undefined;
  }

  /** Right after a number, a bracket or `per` a word is a measure, and x between numbers the sign of a size. */
  private measureOrSizeSign(): boolean {
    const before = this.tokens.at(-1)!;
    if (before.image !== 'per') {
      const sizeSign = this.match(SIZE_SIGN);
      if (sizeSign !== undefined) {
        this.emit('BY', sizeSign);
        return true;
      }
    }
    if (this.afterMeasure()) return false;
    const written = this.match(MEASURE_SIGN) ?? this.match(SQUARE_OR_CUBIC) ?? this.measureWord();
    if (written !== undefined) {
      this.emit('MEASURE', written + this.perMeasure(written));
      return true;
    }
    const name = this.match(NAME);
    if (before.image === ')' || name === undefined || this.clauses.has(name) || name === 'per' || this.rows)
      return false;
    // `9 packs`
    const one = name.replace(/s$/, '');
    const said = Object.hasOwn(SAID_OF_NUMBERS, name.toLowerCase()) ? SAID_OF_NUMBERS[name.toLowerCase()] : undefined;
    const near = said !== undefined ? undefined : this.clauses.has(one) ? one : nearest(name, MEASURES.keys());
    if (said !== undefined) this.fault('unknown-measure', said.message, this.offset, name.length, this.saidFix(said));
    else
      this.fault(
        'unknown-measure',
        `\`${name}\` is no measure.${near === undefined ? ' Write in, ft, yd, mm, cm, m, sq ft, m2, cu yd, m3, lb, kg, short ton or tonne.' : ` Did you mean \`${near}\`?`}`,
        this.offset,
        name.length,
        near === undefined ? [] : writes([near], this.offset, name.length)
      );
    this.emit('MEASURE', name);
    return true;
  }

  /** Over the word at hand; with nothing to write it goes, with the blank before it. */
  private saidFix({ write }: SaidOfNumbers): readonly TextFix[] {
    const name = this.match(NAME)!;
    if (write === undefined) return [];
    if (write !== '') return writes([write], this.offset, name.length);
    return [{ title: 'Take it out', edits: [takenOut(this.text, this.offset, this.offset + name.length)] }];
  }

  private measureWord(): string | undefined {
    const word = this.match(MEASURE_WORD);
    if (word === undefined) return undefined;
    // `20ftx14ft`
    const spelled =
      /x$/i.test(word) && /[0-9]/.test(this.text[this.offset + word.length] ?? '') ? word.slice(0, -1) : word;
    // In a row of names and heights `M` and `T` are points.
    if (this.rows && /^[A-Z]$/.test(spelled)) return undefined;
    const isMeasure = MEASURES.has(spelled.toLowerCase()) || AMBIGUOUS_MEASURES.has(spelled.toLowerCase());
    return isMeasure && !this.isLongerName(spelled) ? spelled : undefined;
  }

  private isLongerName(word: string): boolean {
    const name = this.match(NAME);
    // `12ft6in`, or with the hyphen of a tape `12ft-6in`.
    return name !== undefined && name.length > word.length && !/^(?:-?|x)[0-9]/i.test(name.slice(word.length));
  }

  /** `kg/m3`, `in/ft`: one measure when written without spaces. */
  private perMeasure(written: string): string {
    const at = this.offset + written.length;
    if (this.text[at] !== '/' || this.text[at + 1] === '/') return '';
    MEASURE_WORD.lastIndex = at + 1;
    const below = MEASURE_WORD.exec(this.text)?.[0];
    return below !== undefined && MEASURES.has(below.toLowerCase()) ? '/' + below : '';
  }

  private afterNumber(): boolean {
    const before = this.tokens.at(-1);
    return (
      before !== undefined &&
      before.endLine === this.line &&
      (before.tokenType.name === 'NUMBER' ||
        before.tokenType.name === 'MEASURE' ||
        before.image === ')' ||
        (before.image === 'per' && before.tokenType.name === 'per'))
    );
  }

  /** After a name, a number, a measure or a bracket that closes: what a size sign can follow. */
  private afterOperand(): boolean {
    const before = this.tokens.at(-1);
    return (
      before !== undefined && (before.image === ')' || ['ID', 'NUMBER', 'MEASURE'].includes(before.tokenType.name))
    );
  }

  private afterMeasure(): boolean {
    return this.tokens.at(-1)?.tokenType.name === 'MEASURE';
  }

  // ---- signs and braces ----

  private sign(sign: string): void {
    if (sign === '{') return this.openBrace();
    if (sign === '}') return this.closeBrace();
    if (this.current() === 'unknown') return this.advance(sign);
    if (this.isTapeMark()) {
      this.tapeMarkEnd = this.offset + sign.length;
      return this.advance(sign);
    }
    if (this.isLooseTapeHyphen()) {
      const message =
        'This could be feet and inches, or feet less inches. Leave the hyphen out, or put a space on both sides of it.';
      const end = this.offset + sign.length;
      this.fault('odd-character', message, this.offset, sign.length, [
        { title: 'Leave the hyphen out: feet and inches', edits: [{ start: this.offset, end, text: '' }] },
        { title: 'Put a space behind it: feet less inches', edits: [{ start: end, end, text: ' ' }] }
      ]);
    }
    if (sign === ',' && this.commaPartsStatements()) {
      this.advance(sign);
      return this.statementAfterComma();
    }
    if (sign === '×' && this.sizes && this.afterOperand()) return this.emit('BY', sign);
    const compares = /^(?:[<>]=?|[≤≥])/.exec(this.text.slice(this.offset, this.offset + 2))?.[0];
    if (compares !== undefined && this.clauses.has('least')) return this.comparisonSign(compares);
    const type = MINUS_SIGNS.includes(sign) ? '-' : sign;
    if (!(type in this.types) || type.length !== 1) {
      this.fault(
        'odd-character',
        `\`${sign}\` can't stand here.${this.helpForSign(sign)}`,
        this.offset,
        sign.length,
        this.withoutSign(sign)
      );
      return this.advance(sign);
    }
    if (type === '(') this.deeper();
    if (type === ')') this.nested--;
    if ('+-*/'.includes(type) && ++this.terms === MOST_TERMS)
      this.tooMuch('sum-too-long', `This sum has more than ${MOST_TERMS} terms. Part it with \`let\`.`);
    this.emit(type, sign);
  }

  /** `joint <= 4 mm` */
  private comparisonSign(sign: string): void {
    const words = COMPARISONS[sign]!;
    const message = `\`${sign}\` can't stand here. Write \`${words}\`.`;
    this.fault('odd-character', message, this.offset, sign.length, writes([words], this.offset, sign.length));
    this.advance(sign);
  }

  private helpForSign(sign: string): string {
    if (/[“”„]/.test(sign)) return ' Write a straight quote: ".';
    if (CURRENCY_SIGN.test(sign)) return currencyHelp(currencyFirst(this.text, this.offset, sign).example);
    // `cites leaflet, p. 3`
    return this.isCiting() ? ' The place stands in quotes: `cites leaflet, "page 3"`.' : '';
  }

  private isCiting(): boolean {
    return this.tokens[this.statements.at(-1)?.token ?? -1]?.tokenType.name === 'cites';
  }

  private withoutSign(sign: string): TextFix[] {
    if (this.isCiting()) return [];
    if (CURRENCY_SIGN.test(sign)) return [...currencyFirst(this.text, this.offset, sign).fixes];
    const edits = [takenOut(this.text, this.offset, this.offset + sign.length)];
    // A quote has a fellow somewhere, and goes with it or not at all.
    return /[“”„«»]/.test(sign) ? [] : [{ title: 'Take it out', edits }];
  }

  /** What the tape puts between number and measure, and after it, and what says nothing. */
  private isTapeMark(): boolean {
    const before = this.tokens.at(-1);
    if (before === undefined || (before.endOffset !== this.offset - 1 && this.tapeMarkEnd !== this.offset))
      return false;
    if (before.tokenType.name === 'NUMBER') return this.match(MEASURE_HYPHEN) !== undefined;
    if (before.tokenType.name === 'MEASURE' && this.match(ABBREVIATION_STOP) !== undefined) return true;
    const isFeet = before.tokenType.name === 'MEASURE' && FEET.test(before.image);
    return isFeet && this.match(TAPE_HYPHEN) !== undefined;
  }

  /** `12 ft -6 in`. */
  private isLooseTapeHyphen(): boolean {
    const before = this.tokens.at(-1);
    const isFeet = before?.tokenType.name === 'MEASURE' && FEET.test(before.image);
    return isFeet && before.endLine === this.line && this.match(TAPE_HYPHEN) !== undefined;
  }

  private deeper(): void {
    if (++this.nested === MOST_NESTED + 1)
      this.tooMuch(
        'brackets-too-deep',
        `More than ${MOST_NESTED} brackets stand inside each other here. Part the sum with \`let\`.`
      );
  }

  /** What the parser could choke on is kept from it: the whole chunk is dropped, and is broken by this fault. */
  private tooMuch(id: string, message: string): void {
    this.fault(id, message, this.offset, 1);
    this.chunkTooDeep = true;
  }

  private openBrace(): void {
    // What stands inside a brace that opens nothing has been told with it.
    const isInside = this.current() === 'unknown';
    const known = !isInside && this.opens !== undefined;
    const brace = this.token('{', '{');
    const indent = this.indentOf(this.lineStart);
    if (known) this.tokens.push(brace);
    const isOdd = !known && !isInside && this.tokens.length > 0 && this.orphansOf === undefined && !this.faultOnLine();
    const odd = isOdd ? { odd: this.oddBrace() } : {};
    this.frames.push({ name: known ? this.opens! : 'unknown', brace, indent, ...odd });
    this.skippedLine = 0;
    this.opens = undefined;
    this.clauses = NO_WORDS;
    this.advance('{');
  }

  private oddBrace(): NonNullable<Frame['odd']> {
    const mending = [takenOut(this.text, this.offset, this.offset + 1)];
    const fixes = [{ title: 'Take it out', edits: mending }];
    const before = this.tokens.at(-1)!;
    const message = this.wouldOpen(before)
      ? `\`${before.image}\` begins a statement: give it a line of its own.`
      : 'This { opens nothing.';
    return { fault: this.fault('odd-character', message, this.offset, 1, fixes), mending };
  }

  /** `traffic foot, edges {`: a word that would open a block if it began its line. */
  private wouldOpen({ image, tokenType }: IToken): boolean {
    const block = this.current();
    if (tokenType.name !== 'ID' || block === 'unknown') return false;
    const { statements } = BLOCKS[block];
    return Object.hasOwn(statements, image) && statements[image]!.opens !== undefined;
  }

  private faultOnLine(): boolean {
    const last = this.faults.at(-1);
    return last !== undefined && last.offset >= this.lineStart;
  }

  private closeBrace(): void {
    this.closeDeeperBraces();
    const frame = this.frames.pop();
    this.skippedLine = 0;
    this.clauses = NO_WORDS;
    // The brace that the orphans of an early one are followed by has been told with it.
    if (frame === undefined && this.orphansOf === undefined)
      this.fault('brace-closes-nothing', 'This } closes nothing.', this.offset, 1, [
        { title: 'Take it out', edits: [takenOut(this.text, this.offset, this.offset + 1)] }
      ]);
    if (frame === undefined) this.earlyBrace = undefined;
    if (frame?.name === 'unknown') this.closeOdd(frame);
    if (frame !== undefined && frame.name !== 'unknown' && this.frames.length === 0)
      this.closed = { name: frame.name, offset: this.offset };
    if (frame !== undefined && frame.name !== 'unknown') this.tokens.push(this.token('}', '}'));
    this.advance('}');
  }

  /** Both braces go, if nothing stands between them: what else was meant nobody can tell. */
  private closeOdd({ brace, odd }: Frame): void {
    if (odd === undefined) return;
    const start = brace.startOffset;
    if (this.busyEnd === start + 1) odd.mending.splice(0, 1, takenOut(this.text, start, this.offset + 1));
    else odd.fault.fixes = [];
  }

  /** Where braces don't pair, the indent tells which one was forgotten: this } stands under the line of an outer one. */
  private closeDeeperBraces(): void {
    const column = this.offset - this.lineStart;
    if (this.frames.length < 2 || this.busyLine === this.line || !this.isUnpaired()) return;
    for (let at = this.frames.length - 2; at >= 0; at--) {
      if (this.frames[at + 1]!.indent > column && this.frames[at]!.indent === column) {
        const written: TextEdit[] = [];
        while (this.frames.length > at + 1) this.closeForgotten(`before the } in line ${this.line}`, written);
        return;
      }
    }
  }

  private closeOpenBraces(before: string | undefined, down = 0): void {
    const where = before === undefined ? 'before the end of the file' : `before \`${before}\` in line ${this.line}`;
    const written: TextEdit[] = [];
    while (this.frames.length > down) this.closeForgotten(where, written);
    this.skippedLine = 0;
    this.opens = undefined;
  }

  /** `written`: the braces by which those further inside, forgotten too, would be closed. */
  private closeForgotten(where: string, written: TextEdit[]): void {
    const { name, brace, odd } = this.frames.pop()!;
    // A brace that opens nothing need not be closed.
    if (name !== 'unknown' || odd === undefined) {
      const isOneLine = !this.text.slice(brace.startOffset, this.busyEnd).includes('\n');
      const closing = isOneLine
        ? { start: this.busyEnd, end: this.busyEnd, text: ' }' }
        : this.closingLine(indentAt(this.text, brace.startOffset));
      join(written, closing);
      // A brace that was put in has told its own fault.
      if (brace.image === '') odd!.mending.push(closing);
      else
        this.fault('brace-not-closed', `This { has no } ${where}.`, brace.startOffset, 1, [
          ...(this.frames.length > MOST_NESTED || this.busyEnd === this.openTextEnd
            ? []
            : [{ title: 'Write `}`', edits: [...written] }])
        ]);
    }
    if (name !== 'unknown') this.tokens.push(this.inserted('}', this.tokens.at(-1)!));
  }

  /** A brace on a line of its own, below the last line of which something was read. */
  private closingLine(indent: string): TextEdit {
    const end = endOfLine(this.text, this.busyEnd);
    return { start: end, end, text: `${lineBreakOf(this.text)}${indent}}` };
  }

  /** A word that was not written, right behind the last one that was. */
  private inserted(typeName: '{' | '}', last: IToken): IToken {
    const type = this.types[typeName]!;
    return {
      ...last,
      image: '',
      tokenType: type,
      tokenTypeIdx: type.tokenTypeIdx!,
      startOffset: last.endOffset! + 1,
      startLine: last.endLine!,
      startColumn: last.endColumn! + 1,
      isInsertedInRecovery: true
    };
  }

  private indentOf(lineStart: number): number {
    LINE_INDENT.lastIndex = lineStart;
    return LINE_INDENT.exec(this.text)![0].length;
  }

  /** Whether the braces of this chunk, up to the next top-level word on a line of its own, don't pair. */
  private isUnpaired(): boolean {
    const start = this.chunks.at(-1)?.start ?? 0;
    let known = this.unpaired.get(start);
    if (known === undefined) {
      const topLine = TOP_LINES_AFTER[this.chunks.at(-1)?.word ?? ''] ?? TOP_LINE;
      topLine.lastIndex = start + 1;
      const end = topLine.exec(this.text)?.index ?? this.text.length;
      let open = 0;
      for (const [mark] of this.text.slice(start, end).matchAll(BRACES_AND_TEXTS))
        open += mark === '{' ? 1 : mark === '}' ? -1 : 0;
      known = open !== 0;
      this.unpaired.set(start, known);
    }
    return known;
  }

  private commaPartsStatements(): boolean {
    const block = this.current();
    if (block === 'unknown' || !BLOCKS[block].commas) return false;
    COMMA_WORD.lastIndex = this.offset;
    const after = COMMA_WORD.exec(this.text);
    return after !== null && Object.hasOwn(BLOCKS[block].statements, after[1]!);
  }

  private statementAfterComma(): void {
    const space = this.match(SPACE);
    if (space !== undefined) this.advance(space);
    const word = this.match(NAME)!;
    const block = BLOCKS[this.current() as BlockName];
    this.startStatement(block.statements[word]!);
    this.emit(word, word);
  }

  // ---- small things ----

  private current(): Frame['name'] {
    return this.frames.at(-1)?.name ?? 'spec';
  }

  private endChunk(end: number): void {
    const chunk = this.chunks.at(-1);
    if (chunk === undefined || chunk.end !== chunk.start) return;
    chunk.end = end;
    // Its word and name stay, so that what names it finds it, broken.
    chunk.dropped = this.chunkTooDeep;
    if (this.chunkTooDeep) {
      this.tokens.length = Math.min(this.tokens.length, chunk.firstToken + 2);
      while ((this.statements.at(-1)?.token ?? 0) >= this.tokens.length && this.statements.length > 0)
        this.statements.pop();
    }
    this.chunkTooDeep = false;
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.offset;
    return pattern.exec(this.text)?.[0];
  }

  private fault(
    id: string,
    message: string,
    offset: number,
    length: number,
    fixes: readonly TextFix[] = []
  ): { fixes: readonly TextFix[] } {
    const fault = { id, message, offset, length, fixes };
    this.faults.push(fault);
    return fault;
  }

  private emit(type: string, image: string): void {
    const closed = this.tokens.at(-1)?.image === '}' && this.busyLine !== this.line;
    if (this.frames.length === 0 && (this.chunks.length === 0 || closed) && this.chunks.at(-1)?.start !== this.offset) {
      // Something that follows no statement is a chunk of its own: it breaks nothing else.
      this.endChunk(this.offset);
      this.chunks.push({
        start: this.offset,
        end: this.offset,
        word: '',
        firstToken: this.tokens.length,
        dropped: false
      });
    }
    this.tokens.push(this.token(type, image));
    this.advance(image);
  }

  private token(typeName: string, image: string): IToken {
    const type: TokenType = this.types[typeName]!;
    const column = this.offset - this.lineStart + 1;
    return {
      image,
      tokenType: type,
      tokenTypeIdx: type.tokenTypeIdx!,
      startOffset: this.offset,
      endOffset: this.offset + image.length - 1,
      startLine: this.line,
      endLine: this.line,
      startColumn: column,
      endColumn: column + image.length - 1
    };
  }

  private advance(image: string): void {
    for (let at = 0; at < image.length; at++) {
      if (image[at] !== '\n') continue;
      this.line++;
      this.lineStart = this.offset + at + 1;
    }
    this.offset += image.length;
    if (image.trim() === '') return;
    this.busyLine = this.line;
    if (!image.startsWith('//')) this.busyEnd = this.offset;
  }
}

/** Adds an edit to others; what is written at one place becomes one. */
function join(edits: TextEdit[], next: TextEdit): void {
  const at = edits.findIndex(({ start, end }) => start === next.start && end === next.end);
  if (at < 0) edits.push(next);
  else edits[at] = { ...next, text: edits[at]!.text + next.text };
}

const COMPARISONS: Readonly<Record<string, string>> = {
  '<': 'less than',
  '<=': 'at most',
  '≤': 'at most',
  '>': 'more than',
  '>=': 'at least',
  '≥': 'at least'
};

/** Clauses only behind a value: `1.2 m wide`. Elsewhere they are values of one's own: `rectangle wide x deep`. */
const BEHIND_VALUES: ReadonlySet<string> = new Set(['wide', 'deep']);

/** Words that a day follows. */
const BEFORE_DAYS: ReadonlySet<string> = new Set(['until', 'on']);

/** What people say behind a number that is no measure here; `write`: what stands there instead. */
interface SaidOfNumbers {
  readonly message: string;
  readonly write?: string;
}

const PEOPLE: SaidOfNumbers = { message: 'People are counted by the number alone: `crew 2`.', write: '' };
const PERCENT: SaidOfNumbers = { message: 'Write the share with its sign: `18 %`.', write: '%' };
const CURRENCY_WORD: SaidOfNumbers = {
  message: 'A currency is told by its three letters, such as `38 USD` or `24 GBP`.'
};

const SAID_OF_NUMBERS: Readonly<Record<string, SaidOfNumbers>> = {
  people: PEOPLE,
  persons: PEOPLE,
  men: PEOPLE,
  workers: PEOPLE,
  percent: PERCENT,
  dollar: CURRENCY_WORD,
  dollars: CURRENCY_WORD,
  euro: CURRENCY_WORD,
  euros: CURRENCY_WORD,
  quid: CURRENCY_WORD,
  each: { message: 'Say what is sold, and then for how much: `piece for 3.95 USD`.' }
};

function currencyHelp(example: string): string {
  return ` The currency stands behind the number, by its three letters: \`${example}\`.`;
}

/** Blocks that hold money. */
const OF_MONEY: ReadonlySet<string> = new Set(['job', 'supplier', 'price']);

const NO_WORDS: ReadonlySet<string> = new Set();
