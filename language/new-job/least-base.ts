import { drain, type Paving } from '../paving.ts';
import type { AllAnswers } from './answers.ts';
import { bondFor, countryOf, layersFor, siteFor, systemOf, trafficOf, unitFor } from './build-up.ts';

/** The base that the rules themselves ask for: what they would write in the place of one that is far too thin. */
export function leastBase(answers: AllAnswers, trial: Paving): string {
  const [thin, size] = systemOf(answers) === 'imperial' ? ['1 in', '10 x 10 ft'] : ['25 mm', '3 x 3 m'];
  const { name, size: unitSize } = unitFor(answers);
  const { bed } = layersFor(answers, thin!);
  const text = [
    `job "Base" { rules ${countryOf(answers)} }`,
    `site {`,
    ...siteFor(answers),
    '}',
    `unit ${name} { size ${unitSize} }`,
    'area base {',
    `outline rectangle ${size}`,
    `traffic ${trafficOf(answers).join(', ')}`,
    `paving ${name} in ${bondFor(answers)}`,
    `bed ${bed}`,
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
