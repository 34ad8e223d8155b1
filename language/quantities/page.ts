import { type Expression, leaf, measureOf } from './arithmetic.ts';
import { type KeyOf, type NumbersOf, type Owner, quantitiesOf, quantityOf } from './catalogue.ts';
import type { From, Working, Workings } from './contract.ts';
import { isBareName, workingOf } from './formula-text.ts';

/** The workings of one stage, by JSON pointer from where the stage's owner stands. */
export class Book {
  /** What each number was worked out from. */
  readonly expressions = new Map<string, Expression>();
  /** A number came out too large to be written down: it was left out. */
  overflowed = false;

  /** The workings in words; they cost more than the numbers, so a stage may leave them until they are asked for. */
  get workings(): Record<string, Working> {
    return Object.fromEntries([...this.expressions].map(([pointer, expression]) => [pointer, workingOf(expression)]));
  }

  /** A page for the numbers of one object, at a pointer such as `` (the owner itself), `/dig` or `/edges/2`. */
  page<O extends Owner>(owner: O, at: string): Page<O> {
    return new Page(this, owner, at);
  }
}

/** Numbers of one object. A number and its working are put down in one step, so that they cannot differ. */
export class Page<O extends Owner> {
  readonly #book: Book;
  readonly #owner: O;
  readonly #at: string;
  readonly #numbers: Partial<Record<string, number>> = {};

  constructor(book: Book, owner: O, at: string) {
    this.#book = book;
    this.#owner = owner;
    this.#at = at;
  }

  /**
   * Puts a quantity down with its working, and returns it as a named value for what is worked out from it. Its measure is
   * that of the catalogue; `measure` where it stands beside the number instead.
   */
  put(key: KeyOf<O>, expression: Expression, measure = quantityOf(this.#owner, key).measure): Expression {
    const { name } = quantityOf(this.#owner, key);
    const pointer = `${this.#at}/${key}`;
    if (measureOf(expression) !== measure) throw new Error(`${pointer} is in ${measureOf(expression)}, not ${measure}`);
    if (isBareName(expression)) throw new Error(`The working of ${pointer} is a name alone`);
    if (Number.isFinite(expression.value)) {
      this.#numbers[key] = expression.value;
      this.#book.expressions.set(pointer, expression);
    } else {
      this.#book.overflowed = true;
    }
    return leaf(name, expression.value, measure, { pointer });
  }

  /** Repeats a quantity as the job gives it: no working. */
  repeat(key: KeyOf<O>, value: number): void {
    this.#numbers[key] = value;
  }

  /** What was put down, in the order of the catalogue. */
  get numbers(): NumbersOf<O> {
    const keys = quantitiesOf(this.#owner).map(({ key }) => key);
    const known = keys.filter(key => this.#numbers[key] !== undefined);
    return Object.fromEntries(known.map(key => [key, this.#numbers[key]])) as NumbersOf<O>;
  }
}

/** Workings moved to where their owner stands in the job: pointers within them move along. */
export function movedTo(at: string, workings: Workings): Workings {
  const moved: Record<string, Working> = {};
  for (const [pointer, { formula, values }] of Object.entries(workings)) {
    moved[at + pointer] = { formula, values: values.map(value => ({ ...value, from: fromAt(at, value.from) })) };
  }
  return moved;
}

/** Workings that name areas by their place in one list, told by their places in another: `places[0]` is that of the first. */
export function withAreasAt(places: readonly number[], workings: Workings): Workings {
  const led = (from: From): From => ('pointer' in from ? { pointer: pointerAt(places, from.pointer) } : from);
  return Object.fromEntries(
    Object.entries(workings).map(([pointer, { formula, values }]) => [
      pointer,
      { formula, values: values.map(value => ({ ...value, from: led(value.from) })) }
    ])
  );
}

/** A pointer that names an area by its place in one list, led to its place in another. */
export function pointerAt(places: readonly number[], pointer: string): string {
  return pointer.replace(/^\/areas\/([0-9]+)/, (_, index) => `/areas/${places[Number(index)]!}`);
}

function fromAt(at: string, from: From): From {
  return 'pointer' in from ? { pointer: at + from.pointer } : from;
}
