import { readFileSync } from 'node:fs';
import path from 'node:path';
import { FAULTS } from '../../language/findings/fault-list.ts';
import { SHIPPED_RULES } from '../../language/library/shipped.ts';

export interface Page {
  readonly title: string;
  readonly text: string;
}

/** Every finding there is, in alphabetical order. */
export const FINDING_IDS: readonly string[] = [...new Set([...Object.keys(FAULTS), ...SHIPPED_RULES])].sort();

/** A page that ships: a file beside the bundle, as the editor opens it. */
export function pageOf(name: string): Page {
  return asPage(name, readFileSync(path.join(__dirname, 'pages', `${name}.md`), 'utf8'));
}

/** A text in Markdown as a page, by its head. */
export function asPage(name: string, text: string): Page {
  return { title: /^# (.*)$/m.exec(text)?.[1] ?? name, text };
}
