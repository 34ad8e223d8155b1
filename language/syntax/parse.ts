import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultTokenBuilder,
  EmptyFileSystem,
  inject,
  type CompositeCstNode,
  type LangiumCoreServices,
  type Lexer,
  type LexerResult,
  type ParseResult,
  type ValueConverter
} from 'langium';
import type { IRecognitionException, IToken, TokenType, TokenTypeDictionary } from 'chevrotain';
import type { Spec } from './generated/ast.ts';
import { JobSpecGeneratedModule, PavingGeneratedSharedModule } from './generated/module.ts';
import { hint } from './hints.ts';
import { ChunkIndex } from './chunk-index.ts';
import { LineStarts } from './line-starts.ts';
import { scan, type Chunk, type Scan, type StatementStart, type TextFault } from './scanner.ts';
import type { TextFix } from './text-edit.ts';
import { Trials } from './trials.ts';
import { wantedWords, wordsForParseError } from './parse-errors.ts';

/** A text as read: the syntax tree (recovered where the text is broken), its faults and its top-level chunks. */
export interface ParsedText {
  readonly text: string;
  readonly root: Spec;
  readonly faults: readonly TextFault[];
  readonly chunks: readonly Chunk[];
  readonly tokens: readonly IToken[];
  readonly statements: readonly StatementStart[];
  readonly comments: readonly IToken[];
}

/** A word, number or sign of a text, or a comment, as the scanner parted them. */
export type Token = IToken;

export type Parse = (text: string) => ParsedText;

/** Builds a parser; `isKnownName` tells names declared elsewhere, for hints. After anything it did not expect, the parser inside is thrown away and made anew. */
export function createParse(isKnownName: (name: string) => boolean = () => false): Parse {
  let services: LangiumCoreServices | undefined;
  return text => {
    services ??= createServices();
    const scanned = (services.parser.Lexer as SpecLexer).scan(text);
    try {
      const trials = new Trials(text, scanned.chunks, part => faultyLines(services!, part));
      const parsed = parseAll(services, text, scanned, trials, name => isKnownName(name) || names(scanned, name));
      const faults = scanned.faults.map(fault => (fault.id === 'unknown-statement' ? trials.tried(fault) : fault));
      return result(text, parsed.root, { ...scanned, faults }, parsed.faults);
    } catch {
      services = createServices();
      const root: Spec = { $type: 'Spec', elements: [] };
      const unreadable = {
        id: 'text-unreadable',
        message: 'This file could not be read to its end; nothing of it counts.',
        offset: 0,
        length: 1,
        fixes: []
      };
      return result(text, root, scanned, [unreadable]);
    }
  };
}

/** A text without errors is parsed in one go. Else each chunk is parsed by itself: recovery from an error would throw away words of the next. */
function parseAll(
  services: LangiumCoreServices,
  text: string,
  scanned: Scan,
  trials: Trials,
  isKnownName: (name: string) => boolean
): { root: Spec; faults: readonly TextFault[] } {
  const whole = parseTokens(services, text, scanned.tokens, scanned.comments);
  if (whole.parserErrors.length === 0) return { root: whole.value, faults: [] };
  const faults: TextFault[] = [];
  let root: Spec | undefined;
  let comment = 0;
  scanned.chunks.forEach((chunk, index) => {
    const tokens = scanned.tokens.slice(chunk.firstToken, scanned.chunks[index + 1]?.firstToken);
    const firstComment = comment;
    while (comment < scanned.comments.length && scanned.comments[comment]!.startOffset < chunk.end) comment++;
    if (tokens.length === 0) return;
    const part = parseTokens(services, text, tokens, scanned.comments.slice(firstComment, comment));
    // A chunk cut short here has told why.
    if (!chunk.dropped) {
      const found = part.parserErrors.map(error => parseFault(error, tokens, isKnownName));
      faults.push(...found.map(fault => trials.tried(fault)));
    }
    if (root === undefined) root = part.value;
    else append(root, part.value);
  });
  return { root: root ?? { $type: 'Spec', elements: [] }, faults };
}

/** How many lines of a piece of text have a fault, by itself. */
function faultyLines(services: LangiumCoreServices, text: string): number {
  const { tokens, comments, faults } = (services.parser.Lexer as SpecLexer).scan(text);
  const errors = parseTokens(services, text, tokens, comments).parserErrors;
  const lines = new LineStarts(text);
  const offsets = [...faults, ...errors.map(error => parseFault(error, tokens, () => false))].map(
    ({ offset }) => offset
  );
  return new Set(offsets.map(offset => lines.lineOf(offset))).size;
}

function parseTokens(
  services: LangiumCoreServices,
  text: string,
  tokens: IToken[],
  comments: IToken[]
): ParseResult<Spec> {
  (services.parser.Lexer as SpecLexer).next = { tokens, comments };
  return services.parser.LangiumParser.parse<Spec>(text);
}

/** Hangs the elements of a chunk, and their concrete syntax, under the root of the text. */
function append(root: Spec, part: Spec): void {
  for (const element of part.elements) {
    Object.assign(element, { $container: root, $containerProperty: 'elements', $containerIndex: root.elements.length });
    root.elements.push(element);
  }
  const [into, from] = [root.$cstNode as CompositeCstNode, part.$cstNode as CompositeCstNode];
  into.content.push(...from.content);
}

function result(text: string, root: Spec, scanned: Scan, more: readonly TextFault[]): ParsedText {
  const { chunks, tokens, statements, comments } = scanned;
  // Where a statement was refused as a whole, what the parser makes of the rest of its line is no second fault. But what
  // broke a chunk is told, so that nothing half of it is read.
  const lines = new LineStarts(text);
  const index = new ChunkIndex({ chunks, faults: [] });
  const told = new Set(scanned.faults.map(fault => lines.lineOf(fault.offset)));
  const broken = new Set(scanned.faults.map(fault => index.at(fault.offset)));
  const faults = [...scanned.faults];
  for (const fault of more) {
    const line = lines.lineOf(fault.offset);
    const chunk = index.at(fault.offset);
    if (told.has(line) && broken.has(chunk)) continue;
    told.add(line);
    broken.add(chunk);
    faults.push(fault);
  }
  faults.sort((left, right) => left.offset - right.offset);
  return { text, root, faults, chunks, tokens, statements, comments };
}

/** A fault stands where the reading stopped: at the odd word, or after the last good one if the odd one is on another line. */
function parseFault(
  error: IRecognitionException,
  tokens: readonly IToken[],
  isKnownName: (name: string) => boolean
): TextFault {
  const odd = error.token;
  const before = (error as { previousToken?: IToken }).previousToken ?? tokenBefore(odd, tokens);
  const atEnd =
    Number.isNaN(odd.startOffset) || odd.image === '' || (before !== undefined && before.endLine !== odd.startLine);
  const place = atEnd && before !== undefined && !Number.isNaN(before.startOffset) ? before : odd;
  const help = hint(tokens, indexOf(odd, tokens), isKnownName);
  return {
    id: 'half-statement',
    message: [
      wordsForParseError(error, place === odd ? undefined : place.image, help?.isWhole === true),
      help?.message ?? ''
    ]
      .filter(part => part !== '')
      .join(' '),
    offset: Number.isNaN(place.startOffset) ? 0 : place.startOffset,
    length: Math.max(1, place.image.length),
    fixes: [...(help?.fixes ?? []), ...wantedWord(error, place, place === odd)]
  };
}

/** The one word that can stand here: behind the last good one, or before the odd one. */
function wantedWord(error: IRecognitionException, place: IToken, isOdd: boolean): TextFix[] {
  const word = /^`([a-z-]+)`$/.exec(error.message)?.[1];
  if (word === undefined || Number.isNaN(place.startOffset)) return [];
  const at = isOdd ? place.startOffset : place.endOffset! + 1;
  return [{ title: `Write \`${word}\``, edits: [{ start: at, end: at, text: isOdd ? `${word} ` : ` ${word}` }] }];
}

function tokenBefore(token: IToken, tokens: readonly IToken[]): IToken | undefined {
  return tokens[indexOf(token, tokens) - 1];
}

/** The place of a word among the others; one past them all for the end of the text. */
function indexOf(token: IToken, tokens: readonly IToken[]): number {
  return Number.isNaN(token.startOffset) ? tokens.length : tokens.indexOf(token);
}

/** Whether a text uses a name anywhere. */
function names({ tokens }: Scan, name: string): boolean {
  return tokens.some(token => token.image === name);
}

/** Texts are what stands between their quotes: the language knows no escapes, and a path may hold backslashes. */
const AS_WRITTEN: ValueConverter = {
  convert: written => (/^["“”„«]./.test(written) ? written.replace(/^["“”„«]|["“”»]$/g, '') : written)
};

/** Our scanner in the place of the library's lexer. */
class SpecLexer implements Lexer {
  readonly definition: TokenTypeDictionary;
  /** What the parser is to read next. */
  next: { tokens: IToken[]; comments: IToken[] } = { tokens: [], comments: [] };

  constructor(services: LangiumCoreServices) {
    const types = services.parser.TokenBuilder.buildTokens(services.Grammar) as TokenType[];
    this.definition = Object.fromEntries(types.map(type => [type.name, type]));
  }

  scan(text: string): Scan {
    return scan(text, this.definition);
  }

  tokenize(): LexerResult {
    // The parser takes comments out of the list it is given.
    return { tokens: this.next.tokens, hidden: [...this.next.comments], errors: [] };
  }
}

function createServices(): LangiumCoreServices {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), PavingGeneratedSharedModule);
  const services = inject(createDefaultCoreModule({ shared }), JobSpecGeneratedModule, {
    parser: {
      ParserErrorMessageProvider: () => wantedWords,
      ValueConverter: () => AS_WRITTEN,
      TokenBuilder: () => new DefaultTokenBuilder(),
      Lexer: (services: LangiumCoreServices) => new SpecLexer(services)
    }
  });
  shared.ServiceRegistry.register(services);
  // Making the parser numbers the kinds of words: the scanner needs them numbered.
  void services.parser.LangiumParser;
  return services;
}
