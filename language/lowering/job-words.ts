import type { Country, System } from '../job/job.ts';
import { isJob } from '../syntax/generated/ast.ts';
import { METRIC, TAPE } from './amounts.ts';
import type { Project } from './project.ts';

/** What the words of a job come to: whose rules it is checked by, and the measures that it is shown in. */
export interface RulesAndSystem {
  readonly country: Country;
  readonly system: System;
}

/** As the job says, its file broken or not; in a file without a job as its first length is written. */
export function rulesAndSystem({ main, texts }: Project): RulesAndSystem {
  const jobs = texts.flatMap(text => text.parsed.root.elements.filter(isJob));
  const items = jobs.flatMap(job => job.items);
  const rules = items.flatMap(item => (item.$type === 'JobRules' ? item.countries : []))[0];
  const shown = items.flatMap(item => (item.$type === 'JobShow' ? [item.system] : []))[0];
  const measures = main.parsed.tokens.filter(({ tokenType }) => tokenType.name === 'MEASURE');
  const written = measures.find(({ image }) => METRIC.test(image) || TAPE.test(image))?.image;
  const measured = written === undefined ? undefined : METRIC.test(written) ? 'metric' : 'feet-and-inches';
  const country = rules === 'britain' || rules === 'north-america' ? rules : undefined;
  const usual = country === undefined ? measured : country === 'britain' ? 'metric' : 'feet-and-inches';
  const system = (shown ?? usual) === 'metric' ? 'metric' : 'imperial';
  return { country: country ?? (system === 'metric' ? 'britain' : 'north-america'), system };
}
