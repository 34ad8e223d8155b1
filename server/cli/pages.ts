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

/** The page about a finding: a file beside the bundle, as the editor opens it. */
export function pageOf(id: string): Page {
  const text = readFileSync(path.join(__dirname, 'pages', `${id}.md`), 'utf8');
  return { title: /^# (.*)$/m.exec(text)?.[1] ?? id, text };
}
