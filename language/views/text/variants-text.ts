import type { System } from '../../job/job.ts';
import { findingsApart, type VariantColumn, variantRows } from '../variant-rows.ts';
import type { Colours } from './colours.ts';
import { plainLine } from './plain-line.ts';
import { table } from './table.ts';
import { SENTENCE_WIDTH, wrapped } from './wrapped.ts';

/** A job and its variants side by side, and what is told of each beyond the others. */
export function variantsText(
  written: VariantColumn,
  variants: readonly VariantColumn[],
  system: System,
  colours: Colours
): string[] {
  const columns = [written, ...variants];
  const rows = variantRows(columns, system);
  const heads = columns.map(({ name }) => ({ head: plainLine(name), right: true }));
  const shown = rows.map(({ words, values }) => [plainLine(words), ...values]);
  const isPartly = columns.some(({ priced }) => (priced?.costs?.unpriced.length ?? 0) > 0);
  return [
    ...table([{ head: '' }, ...heads], shown, colours),
    'What is not listed is the same in all of them.',
    ...(isPartly ? ['* Some of it has no price and is not in this.'] : []),
    ...variants.flatMap(variant => apartText(written, variant))
  ];
}

function apartText(written: VariantColumn, { name, numbers, findings }: VariantColumn): string[] {
  const { more, gone } = findingsApart(written.findings, findings);
  const told = [
    ...more.map(({ severity, message }) => `also told, ${severity}: ${message}`),
    ...gone.map(({ message }) => `no longer told: ${message}`),
    ...(numbers?.quantities.complete === true ? [] : ['has not all its numbers, because of the errors told'])
  ];
  return told.flatMap(line => wrapped(plainLine(`${name}: ${line}`), SENTENCE_WIDTH, '  '));
}
