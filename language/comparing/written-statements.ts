import { isShipped } from '../lowering/project.ts';
import { occurrencesIn, type Occurrence } from '../lowering/occurrences.ts';
import type { Kind, SpecText } from '../lowering/names.ts';
import type { WrittenAmount, WrittenAmounts } from '../lowering/written-amounts.ts';
import type { Place } from '../findings/finding.ts';
import type { Look } from '../paving.ts';
import { type Statement, spanOf, statementTree } from '../syntax/statement-tree.ts';
import { nameOf, type NewNames } from './new-names.ts';

/** A quantity in a statement, in SI. */
export type Amount = Pick<WrittenAmount, 'value' | 'measure'> & { readonly written: string };

/** A name in a statement, with the kind of thing that it leads to. */
export interface NameUsed {
  readonly kind: Kind;
  readonly name: string;
}

/** A statement as it is compared: free of place, white space, and how its quantities are written. */
export interface WrittenStatement {
  /** Its first word; of a line that begins with a name that name. */
  readonly word: string;
  /** The thing that it declares. */
  readonly declares?: NameUsed;
  /** As written, words parted by single spaces, without what stands in its braces. */
  readonly text: string;
  /** The same with spaces only where the text has any. */
  readonly shown: string;
  /** Its words with every quantity as its value, and names by what they lead to. */
  readonly parts: readonly (string | NameUsed)[];
  /** The same as text, with every name as it is called in the newer text. */
  readonly meaning: string;
  readonly amounts: readonly Amount[];
  readonly uses: readonly NameUsed[];
  readonly place: Place;
  readonly start: number;
  readonly end: number;
  readonly inside: readonly WrittenStatement[];
  readonly within?: WrittenStatement;
}

/** What leads from one text to another says nothing of the job. */
const ONLY_LEADS: ReadonlySet<string> = new Set(['use']);

/** The statements of a job's own texts in their order; `names` tells how things are called in the newer text. */
export function writtenStatements(
  { project }: Pick<Look, 'project'>,
  amounts: WrittenAmounts,
  names: NewNames
): WrittenStatement[] {
  return project.texts
    .filter(text => !isShipped(project, text))
    .flatMap(text => {
      const read = new StatementReader(text, occurrencesIn(text, project), amounts.get(text.file) ?? new Map(), names);
      return statementTree(text.parsed)
        .filter(({ word }) => !ONLY_LEADS.has(word))
        .map(statement => read.statement(statement));
    });
}

/** Reads the statements of one text. */
class StatementReader {
  readonly #text: SpecText;
  readonly #occurrences: ReadonlyMap<number, Occurrence>;
  readonly #amounts: ReadonlyMap<number, WrittenAmount>;
  readonly #names: NewNames;

  constructor(
    text: SpecText,
    occurrences: readonly Occurrence[],
    amounts: ReadonlyMap<number, WrittenAmount>,
    names: NewNames
  ) {
    this.#text = text;
    this.#occurrences = new Map(occurrences.map(one => [one.start, one]));
    this.#amounts = amounts;
    this.#names = names;
  }

  statement(statement: Statement, block?: WrittenStatement): WrittenStatement {
    const { word, first, end, open, inside } = statement;
    const { parsed } = this.#text;
    const own = this.#own(first, open ?? end);
    const within: WrittenStatement[] = [];
    const span = spanOf(parsed, first, end);
    const found: WrittenStatement = {
      word: this.#wordNow(first, word),
      ...own,
      ...span,
      place: this.#place(first, open ?? end),
      inside: within,
      ...(block === undefined ? {} : { within: block })
    };
    within.push(...inside.map(one => this.statement(one, found)));
    return found;
  }

  /** Lines that begin with a name begin with it as the newer text has it. */
  #wordNow(first: number, word: string): string {
    const name = this.#occurrences.get(this.#text.parsed.tokens[first]!.startOffset);
    return name?.declared === undefined || name.isDeclaration ? word : nameOf(this.#names, name.declared);
  }

  /** The words from one to before another, whatever stands in braces left out. */
  #own(
    first: number,
    end: number
  ): Pick<WrittenStatement, 'declares' | 'text' | 'shown' | 'parts' | 'meaning' | 'amounts' | 'uses'> {
    const { tokens, text } = this.#text.parsed;
    const words: string[] = [];
    let shown = '';
    const parts: (string | NameUsed)[] = [];
    const amounts: Amount[] = [];
    const uses: NameUsed[] = [];
    let declares: NameUsed | undefined;
    let past = -1;
    for (let at = first; at < end; at++) {
      const token = tokens[at]!;
      if (token.image === '') continue;
      const start = token.startOffset;
      words.push(token.image);
      shown += `${shown === '' || text[start - 1]!.trim() !== '' ? '' : ' '}${token.image}`;
      const name = this.#occurrences.get(start);
      if (name?.declared !== undefined) {
        const used = { kind: name.declared.kind, name: nameOf(this.#names, name.declared) };
        if (name.isDeclaration) declares = used;
        else uses.push(used);
      }
      if (start < past) continue;
      const amount = this.#amounts.get(start);
      if (amount !== undefined) {
        past = amount.end;
        amounts.push({ value: amount.value, measure: amount.measure, written: text.slice(start, past).trim() });
        parts.push(`=${amount.value.toPrecision(SAME_DIGITS)} ${amount.measure}`);
      } else if (name?.declared === undefined) parts.push(token.image);
      else parts.push({ kind: name.declared.kind, name: nameOf(this.#names, name.declared) });
    }
    return {
      ...(declares === undefined ? {} : { declares }),
      text: words.join(' '),
      shown,
      parts,
      meaning: parts.map(part => (typeof part === 'string' ? part : part.name)).join(' '),
      amounts,
      uses
    };
  }

  #place(first: number, end: number): Place {
    const { tokens } = this.#text.parsed;
    const from = tokens[first]!;
    const to = tokens[Math.max(first, end - 1)]!;
    return {
      file: this.#text.file,
      line: from.startLine!,
      column: from.startColumn!,
      endLine: to.endLine!,
      endColumn: to.endColumn! + 1
    };
  }
}

/** Quantities that agree in so many digits are one: `1/3 ft` and `4 in`. */
const SAME_DIGITS = 12;
