import type { Place } from '../findings/finding.ts';
import type { Job, Key } from '../job/job.ts';
import type { Evaluation } from '../paving.ts';
import type { ShownFigures } from '../job-figures.ts';
import type { VariantEvaluation } from '../variants.ts';
import { placesAt, type Hover } from './hover.ts';
import { errorWords } from './job-lenses.ts';
import { markdownTable, markdownText } from './markdown.ts';
import { boughtAs, boughtFrom, boughtThing, type Bought } from './order-hover.ts';
import { columnOf, variantRows } from './variant-rows.ts';
import { hiredAt, ownTaskAt } from './work-hover.ts';

/** What the figures say of the thing at a place (1-based): a way to sell, a task of one's own, something hired. */
export function figuresAt(
  evaluation: Evaluation,
  shown: ShownFigures,
  file: string,
  line: number,
  column: number
): Hover | undefined {
  const { job } = evaluation;
  if (job === undefined) return undefined;
  const { figures } = shown;
  for (const [key, place] of placesAt(evaluation, file, line, column)) {
    const found = [
      boughtAs(figures.quantities, key, job) ?? ownTaskAt(figures, job, key) ?? hiredAt(figures, job, key),
      ...pricedThings(job, key).flatMap(thing => boughtThing(figures.quantities, thing, job.system))
    ].filter(one => one !== undefined);
    if (found.length > 0) return { place, markdown: found.map(one => markdown(one, shown, file)).join('\n\n') };
  }
  return undefined;
}

/** What a price list is of: a list that jobs share does not lead to the things of each. */
function pricedThings({ prices }: Job, key: Key): Key[] {
  const list = prices.find(one => one.key === key);
  if (list?.thing !== undefined) return [list.thing];
  return (list?.ways ?? []).flatMap(way => (way.word === 'mixed-pack' ? way.holds.map(({ unit }) => unit) : []));
}

/** What the figures say of a unit, a material or a supplier, wherever its name stands. */
export function figuresOf(
  kind: 'unit' | 'material' | 'supplier',
  name: string,
  shown: ShownFigures,
  place: Place
): string | undefined {
  const { quantities, priced } = shown.figures;
  const { system } = priced.job;
  const key = `${kind}:${name}`;
  const found = kind === 'supplier' ? [boughtFrom(quantities, key, system)] : boughtThing(quantities, key, system);
  const told = found.filter(one => one !== undefined).map(one => markdown(one, shown, place.file));
  return told.length === 0 ? undefined : told.join('\n\n');
}

/** A variant beside the job as it is written: what differs, and cost, days and findings. */
export function variantBeside(
  variant: VariantEvaluation,
  evaluation: Evaluation,
  { figures, broken }: ShownFigures
): string | undefined {
  const { job, numbers, findings } = evaluation;
  if (job === undefined || numbers === undefined || broken?.isBefore === true) return undefined;
  const written = { name: 'as written', numbers, findings, priced: figures.priced };
  const rows = variantRows([written, columnOf(variant)], job.system).map(({ words, values }) => [words, ...values]);
  const isPartly = rows.some(cells => cells.some(cell => cell.endsWith(' *')));
  return [
    `**${markdownText(variant.name)}**`,
    markdownTable(['', 'as written', variant.name], rows),
    ...(isPartly ? ['\\* without what has no price.'] : [])
  ].join('\n\n');
}

/** The headline tells where the figures are old, or not of the whole job. */
function markdown({ headline, parts }: Bought, { figures, broken }: ShownFigures, file: string): string {
  const title = figures.quantities.title === '' ? '' : ` for ${figures.quantities.title}`;
  const state = broken === undefined ? '' : broken.isBefore ? `, before ${errorWords(broken, file)}` : ', not complete';
  return [`**${markdownText(headline)}**${markdownText(title + state)}`, ...parts].join('\n\n');
}
