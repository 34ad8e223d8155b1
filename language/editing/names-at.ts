import type { Place } from '../findings/finding.ts';
import { placeOf } from '../lowering/context.ts';
import { worldAt } from '../lowering/examples.ts';
import type { Declared } from '../lowering/names.ts';
import { occurrencesWithin, type Occurrence } from '../lowering/occurrences.ts';
import type { Look } from '../paving.ts';

/** The name at an offset, also right behind its last letter; in an example of a rule as the example means it. */
export function nameAt(look: Look, offset: number): Occurrence | undefined {
  const { text, project } = worldAt(look, offset);
  const around = occurrencesWithin(text, project, { start: offset, end: offset });
  return around.find(({ start, end }) => start <= offset && offset <= end);
}

/**
 * The same; a neighbour in a file that this one does not use is known to a job that holds both. `looks` are the texts
 * around.
 */
export function nameAmong(looks: readonly Look[], look: Look, offset: number): Occurrence | undefined {
  const own = nameAt(look, offset);
  const isInExample = worldAt(look, offset).text !== look.text;
  if (own === undefined || isInExample || own.declared !== undefined) return own;
  const jobs = looks.filter(({ project }) => project.texts.includes(look.text));
  const known = jobs.map(({ project }) => nameAt({ text: look.text, project }, offset));
  return known.find(occurrence => occurrence?.declared !== undefined) ?? own;
}

/** Where a thing is declared: its name there. */
export function placeOfDeclaration({ text, node }: Declared): Place {
  return placeOf(text, node, 'name');
}
