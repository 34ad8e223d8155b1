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

/** The same in several texts and in all they use, each place once. */
export function placesInAll(looks: readonly Look[], declared: Declared): Occurrence[] {
  const found = new Map<string, Occurrence>();
  for (const look of looksThatMayName(looks, declared))
    for (const occurrence of placesIn(look, declared)) found.set(`${look.text.file}:${occurrence.start}`, occurrence);
  return [...found.values()];
}

/** Areas that sides meet, and what shared price lists are of, stand in other files of the job. */
const FOUND_BY_JOB: readonly Kind[] = ['area', 'unit', 'material'];

/** Every text that sees the thing, as each job sees the text. */
export function* looksThatMayName(looks: readonly Look[], { kind, text: own }: Declared): Generator<Look> {
  const mains = new Set(looks.map(({ text }) => text));
  for (const { text: main, project } of looks) {
    if (!isShipped(project, own) && !project.texts.includes(own)) continue;
    for (const text of project.texts) {
      // In each job that uses a text its names mean the same; some things are also found by way of the job.
      if (FOUND_BY_JOB.includes(kind) || text === main || !mains.has(text)) yield { text, project };
    }
  }
}
