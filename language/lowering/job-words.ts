import type { Country, System } from '../job/job.ts';
import { isJob, isJobCurrency, isJobRules, isJobShow } from '../syntax/generated/ast.ts';
import { METRIC, TAPE } from './amounts.ts';
import { Names } from './names.ts';
import type { Project } from './project.ts';
import { leadsTo, systemOfBook, systemShown } from './rulebook-leads.ts';
import { isCountry } from './things.ts';

/** What the words of a job come to: whose rules it is checked by, and the measures that it is shown in. */
export interface RulesAndSystem {
  readonly country: Country;
  readonly system: System;
}

/** As the job says, its file broken or not; in a file without a job as its first length is written. */
export function rulesAndSystem(project: Project): RulesAndSystem {
  const { main, texts } = project;
  const jobs = texts.flatMap(text => text.parsed.root.elements.filter(isJob).map(node => ({ text, node })));
  const shows = jobs.flatMap(({ node }) => node.items.filter(isJobShow))[0]?.system;
  const shown: System | undefined = shows === undefined ? undefined : systemShown(shows);
  const measures = main.parsed.tokens.filter(({ tokenType }) => tokenType.name === 'MEASURE');
  const written = measures.find(({ image }) => METRIC.test(image) || TAPE.test(image))?.image;
  const measured = written === undefined ? undefined : METRIC.test(written) ? 'metric' : 'imperial';
  const names = new Names(project.visible);
  const books = jobs.flatMap(({ text, node }) =>
    node.items
      .filter(isJobRules)
      .flatMap(item => item.books)
      .flatMap(({ $refText }) => names.peek(text, 'rulebook', $refText) ?? [])
  );
  const leads = books.flatMap(book => leadsTo(names, book));
  const country = leads.map(({ name }) => name).find(isCountry);
  const system = shown ?? leads.flatMap(book => systemOfBook(book) ?? [])[0] ?? measured ?? 'imperial';
  return { country: country ?? (system === 'metric' ? 'britain' : 'north-america'), system };
}

/** The currency that a job names, its file broken or not; else that of the country. */
export function currencyOf(project: Project): string {
  const jobs = project.texts.flatMap(text => text.parsed.root.elements.filter(isJob));
  const said = jobs.flatMap(({ items }) => items.filter(isJobCurrency).flatMap(({ code }) => code ?? []))[0];
  return said ?? CURRENCIES[rulesAndSystem(project).country];
}

const CURRENCIES: Readonly<Record<Country, string>> = {
  'north-america': 'USD',
  britain: 'GBP',
  ireland: 'EUR',
  'continental-europe': 'EUR'
};
