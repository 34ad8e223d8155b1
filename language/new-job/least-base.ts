import { drain, type Paving } from '../paving.ts';
import type { AllAnswers } from './answers.ts';
import { countryOf, siteFor, systemOf, trafficOf } from './build-up.ts';

/** The base that the rules themselves ask for: what they would write in the place of one that is far too thin. */
export function leastBase(answers: AllAnswers, trial: Paving): string {
  const [thin, size] = systemOf(answers) === 'imperial' ? ['1 in', '10 x 10 ft'] : ['25 mm', '3 x 3 m'];
  const text = [
    `job "Base" { rules ${countryOf(answers)} }`,
    `site {`,
    ...siteFor(answers),
    '}',
    'area base {',
    `outline rectangle ${size}`,
    `traffic ${trafficOf(answers).join(', ')}`,
    `base crushed-stone ${thin}`,
    '}'
  ].join('\n');
  trial.setText(FILE, text);
  const findings = drain(trial.evaluate(FILE, 'findings'))!.findings;
  const written = findings.flatMap(({ id, fixes }) =>
    /^base-(?:too-thin|thinner-than-usual)$/.test(id) ? fixes.flatMap(({ edits }) => edits.map(edit => edit.text)) : []
  );
  trial.forget(FILE);
  return written[0] ?? thin!;
}

const FILE = 'least-base.paving';
