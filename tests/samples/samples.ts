import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { NodeFiles } from '../../server/node-files.ts';

const SAMPLES = path.resolve(import.meta.dirname, '../../samples');

/** All files of the samples, from their folder. */
export const FILES: readonly string[] = readdirSync(SAMPLES, { recursive: true, encoding: 'utf8' })
  .filter(file => file.endsWith('.paving'))
  .map(file => file.replaceAll(path.sep, '/'))
  .sort();

/** Those that hold a job. */
export const JOBS: readonly string[] = FILES.filter(file => /^job /m.test(textOf(file)));

export function textOf(file: string): string {
  return readFileSync(path.join(SAMPLES, file), 'utf8');
}

export const pathOf = (file: string): string => path.join(SAMPLES, file);

export function newPaving(): Paving {
  return new Paving(new NodeFiles({ root: SAMPLES, shownFrom: SAMPLES }));
}

/** A sample worked out, in a language of its own unless one is given. */
export async function evaluated(file: string, paving = newPaving()): Promise<Evaluation> {
  await paving.load(pathOf(file));
  return again(paving, file);
}

/** Works out a file that is loaded. */
export function again(paving: Paving, file: string): Evaluation {
  const evaluation = drain(paving.evaluate(pathOf(file)));
  if (evaluation === undefined) throw new Error(`${file} cannot be read: ${paving.problemOf(pathOf(file))}`);
  return evaluation;
}

/** The numbers of each area as text, by its name. */
export function areaNumbers({ numbers }: Evaluation): Map<string, string> {
  return new Map((numbers?.quantities.areas ?? []).map(area => [area.name, JSON.stringify(area)]));
}
