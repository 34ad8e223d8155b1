import type { Place } from '../../findings/finding.ts';
import { worldAt } from '../../lowering/examples.ts';
import type { SpecText } from '../../lowering/names.ts';
import { Placer } from '../../lowering/placer.ts';
import type { Project } from '../../lowering/project.ts';
import { cursorAt, pathsUsedElsewhere, usePathAt } from './cursor.ts';
import { edgeLinesToSay } from './edge-lines.ts';
import { heightLinesToSay } from './height-lines.ts';
import { hasSlots, plainText, snippetText } from './insertion.ts';
import { LOG_ENTRIES, logLine } from './log-lines.ts';
import { helpOn, nameOffers, type CompletionKind, type Offer } from './offer.ts';
import { sceneAt, type Scene } from './scene.ts';
import { statementParts, statementsToSay } from './statements.ts';
import type { Topic } from './topic.ts';
import { wholeJobs } from './whole-job.ts';
import { fileOffer, hasToGoOn, offersWithin } from './within-statement.ts';

export type { CompletionKind };

/** One thing that can stand at the cursor. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One line of help. */
  readonly detail: string;
  /** What there is more to tell of; absent where the line says it all. */
  readonly about?: Topic;
  /** What is replaced: the word at the cursor, on its line. */
  readonly place: Place;
  /** What is typed to find it. */
  readonly filter: string;
  readonly text: string;
  /** The same with places to fill in, in the syntax of the editor's protocol; absent where there are none. */
  readonly snippet?: string;
}

/**
 * What can stand at an offset of a text, and nothing that cannot, those first that are more likely meant. `paths` are the
 * other job specs that it may use, by their paths from this one.
 */
export function completionsAt(
  text: SpecText,
  project: Project,
  offset: number,
  paths: readonly string[] = []
): readonly Completion[] {
  const { parsed } = text;
  const placer = Placer.of(text);
  const used = pathsUsedElsewhere(parsed, offset);
  const free = paths.filter(path => !used.has(path));
  const inUse = usePathAt(parsed, offset);
  if (inUse !== undefined)
    return free.map(path => completion(fileOffer(path, inUse), placer.place(inUse.start, inUse.end)));
  const cursor = cursorAt(parsed, offset);
  if (cursor === undefined) return [];
  const world = worldAt({ text, project }, offset);
  const scene = sceneAt(world.text, world.project, cursor, free);
  const within = cursor.begun === undefined ? [] : offersWithin(scene, cursor.begun);
  const starts = cursor.startsStatement ? startOffers(scene) : [];
  return [...within, ...starts].map(offer => placed(scene, offer, placer));
}

/** Whether the statement can't end at an offset: something of what is offered there has to follow. */
export function hasToGoOnAt(text: SpecText, project: Project, offset: number): boolean {
  if (usePathAt(text.parsed, offset) !== undefined) return true;
  const cursor = cursorAt(text.parsed, offset);
  const world = worldAt({ text, project }, offset);
  return cursor?.begun !== undefined && hasToGoOn(sceneAt(world.text, world.project, cursor, []), cursor.begun);
}

/** Whether an offset lies in the quotes of a `use`, or where they could stand: only there `paths` matter. */
export function asksForPaths({ parsed }: SpecText, offset: number): boolean {
  return usePathAt(parsed, offset) !== undefined || cursorAt(parsed, offset)?.begun?.word === 'use';
}

function startOffers(scene: Scene): Offer[] {
  const { cursor } = scene;
  if (cursor.block === 'edges')
    return edgeLinesToSay(scene).map(({ where, parts }): Offer => {
      const word = /^(?:near|right|far|left|the|all|legs?)(?= |$)/.exec(where)?.[0] ?? 'to';
      const help = helpOn(scene, word);
      return { label: where, kind: 'side', parts: cursor.isFollowed ? [where] : parts, help };
    });
  if (cursor.block === 'heights')
    return heightLinesToSay(scene).map(({ of, parts }): Offer => {
      const offer: Offer =
        of === 'ground'
          ? { label: of, kind: 'statement', parts, help: helpOn(scene, of) }
          : nameOffers(scene, [of])[0]!;
      return { ...offer, parts: cursor.isFollowed ? [offer.label] : parts };
    });
  if (cursor.block === 'log')
    return LOG_ENTRIES.map((word): Offer => {
      const parts = cursor.isFollowed ? [word] : logLine(scene, word);
      return { label: word, kind: 'statement', parts, help: helpOn(scene, word) };
    });
  const statements = statementsToSay(scene).map((word): Offer => {
    const parts = cursor.isFollowed ? [word] : statementParts(scene, cursor.block, word);
    return { label: word, kind: 'statement', parts, help: helpOn(scene, word) };
  });
  return [...wholeJobs(scene), ...statements];
}

/** An offer at the word under the cursor, or close behind the word before it. */
function placed({ text, cursor }: Scene, offer: Offer, placer: Placer): Completion {
  const source = text.parsed.text;
  const { start, end } = cursor;
  const bare = cursor.isFollowed && offer.kind === 'clause' ? { ...offer, parts: [bareOf(offer)] } : offer;
  if (bare.closesUp) {
    const from = source.slice(0, start).trimEnd().length;
    return completion(bare, placer.place(from, end));
  }
  const touches = start === end && /[^\s("]/.test(source[start - 1] ?? ' ');
  return completion(touches ? { ...bare, parts: [' ', ...bare.parts] } : bare, placer.place(start, end));
}

/** Where the statement goes on already, only the word itself is put in. */
function bareOf({ label, parts }: Offer): string {
  return plainText(parts).startsWith(label) ? label : plainText(parts);
}

function completion({ label, kind, help, filter, parts }: Offer, place: Place): Completion {
  return {
    label,
    kind,
    detail: help.line,
    ...(help.about && { about: help.about }),
    place,
    filter: filter ?? label,
    text: plainText(parts),
    ...(hasSlots(parts) ? { snippet: snippetText(parts) } : {})
  };
}
