import type { Place } from '../findings/finding.ts';
import { lower } from '../lowering/lower.ts';
import { namesOf, type Declared, type SpecText } from '../lowering/names.ts';
import { occurrencesIn, type Occurrence } from '../lowering/occurrences.ts';
import type { Project } from '../lowering/project.ts';
import type { Look } from '../paving.ts';
import type { Parse } from '../syntax/parse.ts';
import { applied } from '../syntax/text-edit.ts';

/** Texts read anew with another name in some places, by the text that each was. */
export type Changed = ReadonlyMap<SpecText, SpecText>;

/** Reads the texts anew in which places are to have another name. */
export function* changed(
  looks: readonly Look[],
  places: readonly Occurrence[],
  name: string,
  parse: Parse
): Generator<void, Changed> {
  const texts = new Map<SpecText, SpecText>();
  for (const text of new Set(looks.flatMap(({ project }) => project.texts))) {
    const here = placesInFile(places, text);
    if (here.length === 0) continue;
    const edits = here.map(({ start, end }) => ({ start, end, text: name }));
    const written = applied(text.parsed.text, edits);
    texts.set(text, { file: text.file, parsed: parse(written) });
    yield;
  }
  return texts;
}

/** A name that would be another one, or would not be read as a name. */
export interface Difference {
  readonly place: Place;
  readonly name: string;
  /** It is no name any more, or it leads elsewhere, or it led nowhere before. */
  readonly now: 'unread' | 'elsewhere' | 'found';
}

/** Compares every name before and after: each must still be a name, and lead to the same thing. */
export function* firstDifference(
  looks: readonly Look[],
  texts: Changed,
  places: readonly Occurrence[],
  name: string
): Generator<void, Difference | undefined> {
  const projects = new Map<Project, Project>();
  const things = new Things(texts);
  for (const { text, project } of looks) {
    const after = projects.get(project) ?? withTexts(project, texts);
    projects.set(project, after);
    const difference = yield* differenceIn({ text, project }, after, things, placesInFile(places, text), name);
    if (difference !== undefined) return difference;
  }
  return undefined;
}

function* differenceIn(
  { text, project }: Look,
  after: Project,
  things: Things,
  places: readonly Occurrence[],
  name: string
): Generator<void, Difference | undefined> {
  const textAfter = things.after(text);
  const starts = new Set(places.map(({ start }) => start));
  const before = occurrencesIn(text, project);
  yield;
  const now = occurrencesIn(textAfter, after);
  yield;
  let moved = 0;
  for (const [index, was] of before.entries()) {
    const isChanged = starts.has(was.start);
    const is = now[index];
    const wanted = isChanged ? name : was.name;
    if (is?.name !== wanted || is.start !== was.start + moved || is.kinds.join() !== was.kinds.join())
      return notRead(places, was.start, name);
    if (!things.isSame(was.declared, is.declared))
      return { place: was.place, name: wanted, now: was.declared === undefined ? 'found' : 'elsewhere' };
    if (isChanged) moved += name.length - was.name.length;
  }
  const isSound = now.length === before.length && textAfter.parsed.faults.length === text.parsed.faults.length;
  return isSound ? undefined : notRead(places, Infinity, name);
}

/** What is read otherwise from here on is so by the last change before. */
function notRead(places: readonly Occurrence[], start: number, name: string): Difference | undefined {
  const place = (places.filter(each => each.start <= start).at(-1) ?? places[0])?.place;
  return place && { place, name, now: 'unread' };
}

/** Whether each job comes to the same amounts, whatever the names in it. */
export function* areAmountsSame(looks: readonly Look[], texts: Changed): Generator<void, boolean> {
  for (const project of new Set(looks.map(each => each.project))) {
    const before = amountsOf(project);
    yield;
    const after = amountsOf(withTexts(project, texts));
    yield;
    if (before !== after) return false;
  }
  return true;
}

function amountsOf(project: Project): string {
  return JSON.stringify(lower(project).job, (_, value: unknown) => (typeof value === 'string' ? '' : value)) ?? '';
}

/** Things before and after: the same one is declared in the same place among those of its text. */
class Things {
  private readonly texts: Changed;
  private readonly orders = new Map<SpecText, ReadonlyMap<Declared, number>>();

  constructor(texts: Changed) {
    this.texts = texts;
  }

  after(text: SpecText): SpecText {
    return this.texts.get(text) ?? text;
  }

  isSame(before: Declared | undefined, after: Declared | undefined): boolean {
    if (before === undefined || after === undefined) return before === after;
    return after.text === this.after(before.text) && this.orderOf(after) === this.orderOf(before);
  }

  private orderOf(declared: Declared): number | undefined {
    const { text } = declared;
    const order = this.orders.get(text) ?? new Map(namesOf(text).all.map((each, index) => [each, index]));
    this.orders.set(text, order);
    return order.get(declared);
  }
}

/** In the order of the text. */
function placesInFile(places: readonly Occurrence[], { file }: SpecText): Occurrence[] {
  return places.filter(({ place }) => place.file === file).sort((left, right) => left.start - right.start);
}

function withTexts({ main, texts, visible, shipped, rulebooks }: Project, changed: Changed): Project {
  const now = (text: SpecText): SpecText => changed.get(text) ?? text;
  return {
    main: now(main),
    texts: texts.map(now),
    visible: new Map([...visible].map(([text, seen]) => [now(text), seen.map(now)])),
    shipped,
    rulebooks
  };
}
