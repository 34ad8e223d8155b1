import { escaped } from '../../drawing/svg/escaped.ts';
import { markdownText } from '../markdown.ts';

/*
 * A forge looks through text that is laid out already for `@name`, `#1` and the like, and makes mentions of them whatever
 * was escaped. An element without content between the sign and what follows keeps the two apart, and nothing is to be seen.
 */
const APART = '<span></span>';

/** Before what would be a mention of a person, a request, a milestone, a label, a formula, a small picture. */
const MENTIONS = /(?<=[@#!%~$&^])(?=[\p{L}\p{N}_"'{])|(?<=\bGH-)(?=\d)|(?<=:)(?=[\w+-]+:)/iu;

/** A user's own words on a line of Markdown: nothing is read as markup, leads anywhere or calls anybody. */
export function forgeText(text: string): string {
  return text.trim().split(MENTIONS).map(markdownText).join(APART);
}

/** The same as a paragraph, where a text could begin a list, a rule or an underline of what stands before. */
export function forgeParagraph(text: string): string {
  return forgeText(text)
    .replace(/^(\d+)(?=\.(?:\s|$))/, '$1\\')
    .replace(/^(?=[-=])/, '\\');
}

/** The same where Markdown is not read: within a line of HTML. */
export function summaryText(text: string): string {
  return text.trim().split(MENTIONS).map(escaped).join(APART);
}
