import { worldAt } from '../lowering/examples.ts';
import { namesOf, type Declared, type Kind } from '../lowering/names.ts';
import { isShipped } from '../lowering/project.ts';
import { occurrencesBeside, type Occurrence } from '../lowering/occurrences.ts';
import type { Look } from '../paving.ts';

/** The places in one text that lead to a thing; its declaration among them. */
export function placesIn({ text, project }: Pick<Look, 'text' | 'project'>, declared: Declared): Occurrence[] {
  // Most texts of a folder, and most statements of a text, do not name it at all.
  return occurrencesBeside(text, project, declared.name).filter(
    occurrence => occurrence.declared?.node === declared.node
  );
}

/** The places of a thing that an example of a rule declares, which counts only there; undefined for any other thing. */
export function placesInExample(look: Look, offset: number, declared: Declared): Occurrence[] | undefined {
  const world = worldAt(look, offset);
  const isOwn = world.text !== look.text && namesOf(world.text).all.some(({ node }) => node === declared.node);
  return isOwn ? placesIn(world, declared) : undefined;
}

/** The same in several texts and in all they use, of one thing or several; each place once. */
export function placesInAll(looks: readonly Look[], ...things: readonly Declared[]): Occurrence[] {
  const found = new Map<string, Occurrence>();
  for (const look of looksThatMayName(looks, ...things))
    for (const thing of things)
      for (const occurrence of placesIn(look, thing)) found.set(`${look.text.file}:${occurrence.start}`, occurrence);
  return [...found.values()];
}

/** Things that have one name, for a file that jobs share, such as a price list, names them all in one place. */
export interface Namesakes {
  readonly things: readonly Declared[];
  /** Where the name leads in another job to what ships: it can't have another name there. */
  readonly shipped?: { readonly at: Occurrence; readonly job: string };
}

/** The thing, and each that its name stands for in other jobs where it stands in a file that they share. */
export function namesakesOf(looks: readonly Look[], declared: Declared): Namesakes {
  const jobs = looks.filter(({ text }) => text.parsed.chunks.some(({ word }) => word === 'job'));
  const things = [declared];
  for (const thing of things) {
    const places = placesInAll(looks, thing);
    for (const { text: main, project } of jobs)
      for (const text of project.texts.filter(({ file }) => file !== thing.text.file)) {
        const starts = new Set(places.filter(({ place }) => place.file === text.file).map(({ start }) => start));
        if (starts.size === 0) continue;
        for (const at of occurrencesBeside(text, project, thing.name)) {
          if (!starts.has(at.start) || at.declared === undefined) continue;
          const other = at.declared;
          if (isShipped(project, other.text)) return { things, shipped: { at, job: main.file } };
          if (!things.some(({ node }) => node === other.node)) things.push(other);
        }
      }
  }
  return { things };
}

/** Areas that sides meet, and what shared price lists are of, stand in other files of the job. */
const FOUND_BY_JOB: readonly Kind[] = ['area', 'unit', 'material'];

/** Every text that sees the thing, or one of several, as each job sees the text. */
export function* looksThatMayName(looks: readonly Look[], ...things: readonly Declared[]): Generator<Look> {
  const mains = new Set(looks.map(({ text }) => text));
  for (const { text: main, project } of looks) {
    const known = things.filter(({ text: own }) => isShipped(project, own) || project.texts.includes(own));
    const areFoundByJob = known.some(({ kind }) => FOUND_BY_JOB.includes(kind));
    for (const text of known.length === 0 ? [] : project.texts) {
      // In each job that uses a text its names mean the same; some things are also found by way of the job.
      if (areFoundByJob || text === main || !mains.has(text)) yield { text, project };
    }
  }
}
