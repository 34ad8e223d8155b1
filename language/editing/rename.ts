import { capital } from '../lowering/amounts.ts';
import { isShipped } from '../lowering/project.ts';
import type { Place, TextChange } from '../findings/finding.ts';
import { article } from '../lowering/context.ts';
import { worldAt } from '../lowering/examples.ts';
import { KIND_WORDS, namesOf, type Declared, type SpecText } from '../lowering/names.ts';
import type { Occurrence } from '../lowering/occurrences.ts';
import type { Look } from '../paving.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import { LineStarts } from '../syntax/line-starts.ts';
import type { Parse } from '../syntax/parse.ts';
import { NAME } from '../syntax/patterns.ts';
import { nameAmong, placeOfDeclaration } from './names-at.ts';
import { looksThatMayName, type Namesakes, namesakesOf, placesInAll } from './references.ts';
import { areAmountsSame, changed, firstDifference, type Difference } from './same-meaning.ts';
import { endOf, startOf } from './words.ts';

/** Why something is not done, in words for the person who asked. */
export interface Refusal {
  readonly refused: string;
}

/** A name that can be changed, and where the cursor stands in it. */
export interface Renameable {
  readonly place: Place;
  readonly name: string;
}

export interface Renaming {
  readonly changes: readonly TextChange[];
}

/** Whether the name at an offset can be changed at all. */
export function renameableAt(looks: readonly Look[], look: Look, offset: number): Renameable | Refusal {
  const found = thingAt(looks, look, offset);
  return 'refused' in found ? found : { place: found.at.place, name: found.at.name };
}

/**
 * The changes that give a thing another name, in every text that sees it. `looks` are all texts that may see it; `parse`
 * reads what they come to. Refused where anything would then mean something else than before. Works in steps, for all texts
 * are read and compared.
 */
export function* renamed(
  looks: readonly Look[],
  look: Look,
  offset: number,
  name: string,
  parse: Parse
): Generator<void, Renaming | Refusal> {
  const found = thingAt(looks, look, offset);
  if ('refused' in found) return found;
  const { declared } = found;
  if (name === declared.name) return { changes: [] };
  const { things, shipped } = namesakesOf(looks, declared);
  if (shipped !== undefined) return { refused: alsoShipped(shipped, declared) };
  yield;
  const seeing = [...looksThatMayName(looks, ...things)];
  const clash = noName(name) ?? things.map(thing => taken(seeing, thing, name)).find(one => one !== undefined);
  if (clash !== undefined) return { refused: clash };
  yield;
  const places = placesInAll(looks, ...things);
  yield;
  const unread = unreadName(seeing, declared.name, places);
  if (unread !== undefined) return { refused: unread };
  const texts = yield* changed(seeing, places, name, parse);
  const difference = yield* firstDifference(seeing, texts, places, name);
  if (difference !== undefined) return { refused: differenceInWords(difference, name) };
  if (things.some(thing => standsOverShipped(look, thing)) && !(yield* areAmountsSame(seeing, texts)))
    return {
      refused: `\`${declared.name}\` stands in the place of what ships by that name. Under another name numbers of the job would change.`
    };
  return { changes: places.map(({ place }): TextChange => ({ place, text: name })) };
}

function alsoShipped({ at, job }: NonNullable<Namesakes['shipped']>, { kind, name }: Declared): string {
  const { file, line } = at.place;
  return `\`${name}\` in line ${line} of ${file} is also what ships by that name, in ${job}, which would be left without it. Declare a ${KIND_WORDS[kind]} called \`${name}\` there first, or give that job a file of its own.`;
}

function standsOverShipped({ project }: Look, { kind, name }: Declared): boolean {
  return [project.shipped, ...project.rulebooks].some(text => namesOf(text).byName.has(`${kind} ${name}`));
}

function differenceInWords({ place, name: there, now }: Difference, name: string): string {
  const where = `line ${place.line} of ${place.file}`;
  if (now === 'unread')
    return `\`${name}\` can't be a name in ${where}: it would be read as something else there. Choose another name.`;
  return now === 'found'
    ? `\`${there}\` in ${where} leads nowhere so far, and would then lead here. Put it right there first, or choose another name.`
    : `\`${there}\` in ${where} would then lead to something else. Choose another name.`;
}

function thingAt(
  looks: readonly Look[],
  look: Look,
  offset: number
): { readonly at: Occurrence; readonly declared: Declared } | Refusal {
  const { text, project } = look;
  if (worldAt(look, offset).text !== text)
    return { refused: 'Names in an example of a rule count only there: change them by hand.' };
  const at = nameAmong(looks, look, offset);
  if (at === undefined)
    return {
      refused: new ChunkIndex(text.parsed).isBroken(offset)
        ? 'There is no name here that can be read. Put right what is wrong here first.'
        : 'Only the name of something that is declared can be changed: of a point, a unit, a material, an area and so on.'
    };
  const { declared } = at;
  if (declared === undefined)
    return { refused: `\`${at.name}\` is declared nowhere: there is nothing to rename. Write the right name instead.` };
  if (isShipped(project, declared.text))
    return { refused: `\`${declared.name}\` is a ${KIND_WORDS[declared.kind]} that ships: its name stays as it is.` };
  return { at, declared };
}

function noName(name: string): string | undefined {
  if (isName(name)) return undefined;
  const near = name.trim().replaceAll(/[^\p{L}\p{M}\p{N}_]+/gu, '-');
  const instead = isName(near) ? ` Write \`${near}\`?` : '';
  return `\`${name}\` is no name. A name is one word: it begins with a letter; letters, figures and hyphens between them may follow.${instead}`;
}

function isName(name: string): boolean {
  NAME.lastIndex = 0;
  return NAME.exec(name)?.[0] === name;
}

/** Each kind of thing has names of its own, over all files of a job. */
function taken(seeing: readonly Look[], { kind }: Declared, name: string): string | undefined {
  for (const { project } of seeing) {
    for (const text of [...project.texts, ...project.rulebooks, project.shipped]) {
      const other = namesOf(text).byName.get(`${kind} ${name}`);
      if (other === undefined) continue;
      if (isShipped(project, text))
        return `\`${name}\` is a ${KIND_WORDS[kind]} that ships; a thing of your own by that name would stand in its place. Choose another name.`;
      const { line } = placeOfDeclaration(other);
      return `${capital(article(KIND_WORDS[kind]))} called \`${name}\` is declared in line ${line} of ${text.file} already. Choose another name.`;
    }
  }
  return undefined;
}

/** The name where a text could not be read: it may be meant, and would be left behind. */
function unreadName(seeing: readonly Look[], name: string, places: readonly Occurrence[]): string | undefined {
  for (const text of new Set(seeing.flatMap(({ project }) => project.texts))) {
    const known = new Set(places.filter(({ place }) => place.file === text.file).map(({ start }) => start));
    const offset = unread(text, name).find(start => !known.has(start));
    if (offset === undefined) continue;
    const line = new LineStarts(text.parsed.text).lineOf(offset) + 1;
    return `\`${name}\` also stands in line ${line} of ${text.file}, where something is wrong. Put that right first.`;
  }
  return undefined;
}

/** Where a word stands in what is broken of a text, comments left out. */
function unread({ parsed }: SpecText, name: string): number[] {
  if (parsed.faults.length === 0) return [];
  const chunks = new ChunkIndex(parsed);
  const isOutside = parsed.faults.some(({ offset }) => chunks.at(offset) === undefined);
  const inComment = (offset: number): boolean =>
    parsed.comments.some(comment => startOf(comment) <= offset && offset < endOf(comment));
  return [...parsed.text.matchAll(new RegExp(NAME.source, 'gu'))]
    .filter(([word]) => word === name)
    .map(({ index }) => index)
    .filter(offset => (isOutside || chunks.isBroken(offset)) && !inComment(offset));
}
