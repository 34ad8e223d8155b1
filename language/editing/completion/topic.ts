import { Names, type Kind, type SpecText } from '../../lowering/names.ts';
import type { Project } from '../../lowering/project.ts';
import { measureHelp, thingHelp, wordHelp, type WordPlace } from '../word-help.ts';

/** What an offer is about: enough to tell more of it once it is looked at, and little enough to send there and back. */
export type Topic =
  | { readonly word: string; readonly at: WordPlace }
  | { readonly measure: string }
  | { readonly kind: Kind; readonly name: string }
  | { readonly text: string };

/** Markdown; empty where there is no more to tell, or the thing has gone meanwhile. */
export function documentationOf(topic: Topic, text: SpecText, project: Project): string {
  if ('text' in topic) return topic.text;
  if ('word' in topic) return wordHelp(topic.word, topic.at)?.text ?? '';
  if ('measure' in topic) return measureHelp(topic.measure)?.text ?? '';
  const names = new Names(project.visible);
  const found = names.peek(text, topic.kind, topic.name);
  // A side meets areas of files that this one does not use.
  const declared = found ?? (topic.kind === 'area' ? names.neighbour(topic.name) : undefined);
  return (declared && thingHelp(declared, project)?.text) ?? '';
}
