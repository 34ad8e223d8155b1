import type { Place } from '../findings/finding.ts';
import type { Key } from '../job/job.ts';
import type { From, Workings } from '../quantities/contract.ts';
import type { Edit } from './edits.ts';
import type { JobNumber } from './job-numbers.ts';
import type { NameUsed, WrittenStatement } from './written-statements.ts';

/** One text of a job, as far as it is asked what its numbers hang on. */
export interface CauseInputs {
  readonly statements: readonly WrittenStatement[];
  readonly workings: Workings;
  readonly numbers: readonly JobNumber[];
  readonly placeOf: (key: Key) => Place | undefined;
  /** The edits, by the statement of this text that they concern. */
  readonly edits: readonly { readonly edit: Edit; readonly statement: WrittenStatement }[];
}

/** Which edits stand behind a number: those in its working, and in what the working is taken from. */
export class Causes {
  readonly #inputs: CauseInputs;
  readonly #declared = new Map<string, WrittenStatement>();
  readonly #byFile = new Map<string, WrittenStatement[]>();
  readonly #ofStatement = new Map<WrittenStatement, ReadonlySet<Edit>>();
  readonly #ofPointer = new Map<string, ReadonlySet<Edit>>();
  /** Pointers that have a working, by the object that their number stands in. */
  readonly #pointersIn = new Map<string, string[]>();

  /** Numbers of an area by what they are and come to: a total of one area alone repeats it, and has no working. */
  readonly #ofAreas = new Map<string, JobNumber>();
  readonly #alike = new Map<string, string>();

  readonly #editOf: ReadonlyMap<WrittenStatement, Edit>;
  /** Statements and numbers looked at, a count of work. */
  steps = 0;

  constructor(inputs: CauseInputs) {
    this.#inputs = inputs;
    this.#editOf = new Map(inputs.edits.map(({ edit, statement }) => [statement, edit]));
    for (const number of inputs.numbers) {
      const alike = `${number.quantity.key} ${number.value}`;
      this.#alike.set(number.pointer, alike);
      if (number.pointer.startsWith('/areas/')) this.#ofAreas.set(alike, number);
    }
    const all = inputs.statements.flatMap(withAllInside);
    for (const pointer of Object.keys(inputs.workings)) {
      const [object] = /^.*\//.exec(pointer) ?? [''];
      const known = this.#pointersIn.get(object);
      if (known === undefined) this.#pointersIn.set(object, [pointer]);
      else known.push(pointer);
    }
    for (const statement of all) {
      const { declares, place } = statement;
      if (declares !== undefined) this.#declared.set(nameKey(declares), statement);
      const inFile = this.#byFile.get(place.file);
      if (inFile === undefined) this.#byFile.set(place.file, [statement]);
      else inFile.push(statement);
    }
  }

  /** By JSON pointer; where it has no working, of the thing it belongs to. */
  ofNumber(pointer: string, thing: Key | undefined): ReadonlySet<Edit> {
    const found = this.#followed(pointer);
    if (found.size > 0) return found;
    // A number that repeats another has no working: it stands beside that one.
    const beside = this.#besides(pointer);
    return beside.size > 0 || thing === undefined ? beside : this.ofKey(thing);
  }

  /** Of all that is said about a thing. */
  ofKey(key: Key): ReadonlySet<Edit> {
    // An area and its edge: `area:a+area:b`, `area:a/edges/A to B`.
    const found = new Set<Edit>();
    for (const one of key.split('+')) for (const edit of this.#ofPlace(one)) found.add(edit);
    return found;
  }

  #besides(pointer: string): ReadonlySet<Edit> {
    const [object] = /^.*\//.exec(pointer) ?? [''];
    const found = new Set<Edit>();
    for (const other of this.#pointersIn.get(object) ?? []) for (const edit of this.#followed(other)) found.add(edit);
    return found;
  }

  /** Workings lead to numbers before them, never round: each is followed once. */
  #followed(pointer: string): ReadonlySet<Edit> {
    const known = this.#ofPointer.get(pointer);
    if (known !== undefined) return known;
    const found = new Set<Edit>();
    this.#ofPointer.set(pointer, found);
    this.steps++;
    const working = this.#inputs.workings[pointer];
    if (working === undefined && !pointer.startsWith('/areas/')) {
      const repeated = this.#ofAreas.get(this.#alike.get(pointer) ?? '');
      for (const edit of repeated === undefined ? [] : this.ofNumber(repeated.pointer, repeated.thing)) found.add(edit);
    }
    for (const { from } of working?.values ?? []) for (const edit of this.#from(from)) found.add(edit);
    return found;
  }

  #from(from: From): ReadonlySet<Edit> {
    if ('pointer' in from) return this.#followed(from.pointer);
    if ('key' in from) return this.ofKey(from.key);
    return 'shape' in from ? this.#ofShape(from.shape) : new Set();
  }

  /** Of what an area or a side of it measures its outline stands behind, and nothing else that is said about it. */
  #ofShape(shape: string): ReadonlySet<Edit> {
    const found = new Set<Edit>();
    for (const key of shape.split('+')) {
      const area = key.replace(/\/edges\/.*$/, '');
      const place = this.#inputs.placeOf(area);
      const outline = place && this.#statementAt(place)?.inside.find(({ word }) => word === 'outline');
      for (const edit of outline === undefined ? this.#ofPlace(key) : this.#of(outline)) found.add(edit);
    }
    return found;
  }

  #ofPlace(key: Key): ReadonlySet<Edit> {
    const place = this.#inputs.placeOf(key);
    const statement = place && this.#statementAt(place);
    return statement === undefined ? new Set() : this.#of(statement);
  }

  /** The innermost statement that holds a place. */
  #statementAt({ file, line, column }: Place): WrittenStatement | undefined {
    const holds = ({ place }: WrittenStatement): boolean =>
      (place.line < line || (place.line === line && place.column <= column)) &&
      (place.endLine > line || (place.endLine === line && place.endColumn >= column));
    return (this.#byFile.get(file) ?? []).findLast(holds);
  }

  /** Its own edits, those of what stands in it, and of all things that it names, each looked at once. */
  #of(statement: WrittenStatement): ReadonlySet<Edit> {
    const known = this.#ofStatement.get(statement);
    if (known !== undefined) return known;
    const found = new Set<Edit>();
    const seen = new Set([statement]);
    const waiting = [statement];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      this.steps++;
      const edit = this.#editOf.get(next);
      if (edit !== undefined) found.add(edit);
      const named = next.uses.flatMap(name => this.#declared.get(nameKey(name)) ?? []);
      for (const one of [...next.inside, ...named]) {
        if (seen.has(one)) continue;
        seen.add(one);
        waiting.push(one);
      }
    }
    this.#ofStatement.set(statement, found);
    return found;
  }
}

function withAllInside(statement: WrittenStatement): WrittenStatement[] {
  return [statement, ...statement.inside.flatMap(withAllInside)];
}

function nameKey({ kind, name }: NameUsed): string {
  return `${kind}:${name}`;
}
