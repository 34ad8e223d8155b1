import type { Place } from '../../findings/finding.ts';
import type { SpecText } from '../../lowering/names.ts';
import type { Project } from '../../lowering/project.ts';
import { LineStarts } from '../../syntax/line-starts.ts';
import { cursorAt, pathsUsedElsewhere, usePathAt } from './cursor.ts';
import { edgeLinesToSay } from './edge-lines.ts';
import { hasSlots, plainText, snippetText } from './insertion.ts';
import { helpOn, type CompletionKind, type Offer } from './offer.ts';
import { sceneAt, type Scene } from './scene.ts';
import { statementParts, statementsToSay } from './statements.ts';
import { wholeJobs } from './whole-job.ts';
import { fileOffer, offersWithin } from './within-statement.ts';

export type { CompletionKind };

/** One thing that can stand at the cursor. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One line of help. */
  readonly detail: string;
  /** Markdown; may be empty. */
  readonly documentation: string;
  /** What is replaced: the word at the cursor, on its line. */
  readonly place: Place;
  /** What is typed to find it. */
  readonly filter: string;
  readonly text: string;
  /** The same with places to fill in, in the syntax of the editor's protocol; absent where there are none. */
  readonly snippet?: string;
}

export interface Completions {
  /** Those first that are more likely meant. */
  readonly offered: readonly Completion[];
  /** The statement can't end here: something of this has to follow. */
  readonly wanted: boolean;
}

const NOTHING: Completions = { offered: [], wanted: false };

/**
 * What can stand at an offset of a text, and nothing that cannot. `paths` are the other job specs that it may use, by
 * their paths from this one.
 */
export function completionsAt(
  text: SpecText,
  project: Project,
  offset: number,
  paths: readonly string[] = []
): Completions {
  const { parsed } = text;
  const used = pathsUsedElsewhere(parsed, offset);
  const free = paths.filter(path => !used.has(path));
  const inUse = usePathAt(parsed, offset);
  if (inUse !== undefined)
    return {
      offered: free.map(path => completion(text, fileOffer(path, inUse), inUse.start, inUse.end)),
      wanted: true
    };
  const cursor = cursorAt(parsed, offset);
  if (cursor === undefined) return NOTHING;
  const scene = sceneAt(text, project, cursor, free);
  const within = cursor.begun === undefined ? undefined : offersWithin(scene, cursor.begun);
  const starts = cursor.startsStatement ? startOffers(scene) : [];
  const offers = [...(within?.offers ?? []), ...starts];
  return { offered: offers.map(offer => placed(scene, offer)), wanted: within?.wanted ?? false };
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
  const statements = statementsToSay(scene).map((word): Offer => {
    const parts = cursor.isFollowed ? [word] : statementParts(scene, cursor.block, word);
    return { label: word, kind: 'statement', parts, help: helpOn(scene, word) };
  });
  return [...wholeJobs(scene), ...statements];
}

/** An offer at the word under the cursor, or close behind the word before it. */
function placed(scene: Scene, offer: Offer): Completion {
  const { text, cursor } = scene;
  const source = text.parsed.text;
  const { start, end } = cursor;
  const bare = cursor.isFollowed && offer.kind === 'clause' ? { ...offer, parts: [bareOf(offer)] } : offer;
  if (bare.closesUp) {
    const from = source.slice(0, start).trimEnd().length;
    return completion(text, bare, from, end);
  }
  const touches = start === end && /[^\s("]/.test(source[start - 1] ?? ' ');
  return completion(text, touches ? { ...bare, parts: [' ', ...bare.parts] } : bare, start, end);
}

/** Where the statement goes on already, only the word itself is put in. */
function bareOf({ label, parts }: Offer): string {
  return plainText(parts).startsWith(label) ? label : plainText(parts);
}

function completion(text: SpecText, offer: Offer, start: number, end: number): Completion {
  const { label, kind, help, filter, parts } = offer;
  return {
    label,
    kind,
    detail: help.line,
    documentation: help.text,
    place: placeOf(text, start, end),
    filter: filter ?? label,
    text: plainText(parts),
    ...(hasSlots(parts) ? { snippet: snippetText(parts) } : {})
  };
}

function placeOf({ file, parsed }: SpecText, start: number, end: number): Place {
  const lines = new LineStarts(parsed.text);
  return {
    file,
    line: lines.lineOf(start) + 1,
    column: lines.columnOf(start) + 1,
    endLine: lines.lineOf(end) + 1,
    endColumn: lines.columnOf(end) + 1
  };
}
