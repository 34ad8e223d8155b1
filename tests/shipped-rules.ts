// The rules that ship, as a job is checked by them.
import type { Rule } from '../language/job/rule.ts';
import { drain, Paving } from '../language/paving.ts';

const paving = new Paving({
  resolve: () => undefined,
  read: () => Promise.resolve({ problem: 'missing' }),
  show: file => file
});

/** The rules of shipped rulebooks, and those that a text adds. */
export function rulesOf(rulebooks: readonly string[], more = ''): readonly Rule[] {
  paving.setText('rules.paving', `job "Rules" { rules ${rulebooks.join(', ')} }\n${more}`);
  return drain(paving.evaluate('rules.paving', 'findings'))!.job!.rules;
}
