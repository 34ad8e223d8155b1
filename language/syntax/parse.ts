import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultTokenBuilder,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type Lexer,
  type LexerResult,
  type ParseResult
} from 'langium';
import type { IRecognitionException, IToken, TokenType, TokenTypeDictionary } from 'chevrotain';
import type { Spec } from './generated/ast.ts';
import { JobSpecGeneratedModule, PavingGeneratedSharedModule } from './generated/module.ts';
import { scan, type Chunk, type Scan, type TextFault } from './scanner.ts';
import { wantedWords, wordsForParseError } from './parse-errors.ts';

/** A text as read: the syntax tree (recovered where the text is broken), its faults and its top-level chunks. */
export interface ParsedText {
  readonly text: string;
  readonly root: Spec;
  readonly faults: readonly TextFault[];
  readonly chunks: readonly Chunk[];
  readonly tokens: readonly IToken[];
  readonly comments: readonly IToken[];
}

export type Parse = (text: string) => ParsedText;

/** Builds a parser. After anything it did not expect, the parser inside is thrown away and made anew. */
export function createParse(): Parse {
  let services: LangiumCoreServices | undefined;
  return text => {
    services ??= createServices();
    let parsed: ParseResult<Spec>;
    let scanned: Scan;
    try {
      parsed = services.parser.LangiumParser.parse<Spec>(text);
      scanned = (services.parser.Lexer as SpecLexer).last;
    } catch {
      services = createServices();
      scanned = (services.parser.Lexer as SpecLexer).scanOnly(text);
      parsed = services.parser.LangiumParser.parse<Spec>('');
      return result(text, parsed, scanned, [
        { id: 'text-unreadable', message: 'This file could not be read to its end; nothing of it counts.', offset: 0, length: 1 }
      ]);
    }
    return result(text, parsed, scanned, parsed.parserErrors.map(error => parseFault(error, scanned)));
  };
}

function result(text: string, parsed: ParseResult<Spec>, scanned: Scan, more: readonly TextFault[]): ParsedText {
  // Where a statement was refused as a whole, what the parser makes of the rest of its line is no second fault.
  const lineOf = lines(text);
  const refused = new Set(scanned.faults.map(fault => lineOf(fault.offset)));
  const faults = [...scanned.faults, ...more.filter(fault => !refused.has(lineOf(fault.offset)))];
  faults.sort((left, right) => left.offset - right.offset);
  return { text, root: parsed.value, faults, chunks: scanned.chunks, tokens: scanned.tokens, comments: scanned.comments };
}

function lines(text: string): (offset: number) => number {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return offset => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  };
}

/** A fault stands where the reading stopped: at the odd word, or after the last good one if the odd one is on another line. */
function parseFault(error: IRecognitionException, scanned: Scan): TextFault {
  const odd = error.token;
  const before = (error as { previousToken?: IToken }).previousToken ?? tokenBefore(odd, scanned);
  const atEnd = Number.isNaN(odd.startOffset) || odd.image === '' || (before !== undefined && before.endLine !== odd.startLine);
  const place = atEnd && before !== undefined && !Number.isNaN(before.startOffset) ? before : odd;
  return {
    id: 'half-statement',
    message: wordsForParseError(error, place === odd ? undefined : place.image),
    offset: Number.isNaN(place.startOffset) ? 0 : place.startOffset,
    length: Math.max(1, place.image.length)
  };
}

function tokenBefore(token: IToken, scanned: Scan): IToken | undefined {
  const at = Number.isNaN(token.startOffset) ? scanned.tokens.length : scanned.tokens.indexOf(token);
  return scanned.tokens[at - 1];
}

/** Our scanner in the place of the library's lexer. */
class SpecLexer implements Lexer {
  readonly definition: TokenTypeDictionary;
  last: Scan = { tokens: [], comments: [], faults: [], chunks: [] };

  constructor(services: LangiumCoreServices) {
    const types = services.parser.TokenBuilder.buildTokens(services.Grammar) as TokenType[];
    this.definition = Object.fromEntries(types.map(type => [type.name, type]));
  }

  scanOnly(text: string): Scan {
    return scan(text, this.definition);
  }

  tokenize(text: string): LexerResult {
    this.last = this.scanOnly(text);
    return { tokens: this.last.tokens, hidden: this.last.comments, errors: [] };
  }
}

function createServices(): LangiumCoreServices {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), PavingGeneratedSharedModule);
  const services = inject(createDefaultCoreModule({ shared }), JobSpecGeneratedModule, {
    parser: {
      ParserErrorMessageProvider: () => wantedWords,
      TokenBuilder: () => new DefaultTokenBuilder(),
      Lexer: (services: LangiumCoreServices) => new SpecLexer(services)
    }
  });
  shared.ServiceRegistry.register(services);
  return services;
}
