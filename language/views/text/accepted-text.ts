import type { Acceptance, AcceptedFinding } from '../../findings/finding.ts';
import { howLong } from '../how-long.ts';
import type { Colours } from './colours.ts';
import { numberOf, placeText } from './findings-text.ts';
import { plainLine } from './plain-line.ts';
import { table } from './table.ts';

/** `2 findings set aside.`; undefined where none are. */
export function acceptedCount(accepted: readonly AcceptedFinding[]): string | undefined {
  return accepted.length === 0 ? undefined : `${numberOf(accepted.length, 'finding')} set aside.`;
}

/** What is set aside, each once: by what rule, on what, how long, where and why. */
export function acceptedText(accepted: readonly AcceptedFinding[], colours: Colours): string {
  if (accepted.length === 0) return 'Nothing is set aside.';
  const all = new Map(accepted.map(finding => [JSON.stringify(finding.accepted), finding.accepted]));
  const heads = ['Rule', 'On', 'How long', 'Where', 'Why'].map(head => ({ head }));
  const lines = table(heads, [...all.values()].map(row), colours);
  return [colours.strong('Set aside'), ...lines.map(line => `  ${line}`)].join('\n');
}

function row(acceptance: Acceptance): string[] {
  const { rule, thing, file, line, column, reason } = acceptance;
  return [rule, thing, plainLine(howLong(acceptance)), placeText(file, line, column), plainLine(reason)];
}
