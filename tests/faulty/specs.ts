import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { NodeFiles } from '../../server/node-files.ts';

export const FOLDER = import.meta.dirname;

export interface Spec {
  readonly name: string;
  readonly id: string;
  readonly file: string;
}

/** The faulty specs: `ID.paving`, `ID.VARIANT.paving` or a folder `ID/ID.paving` with the files it uses. */
export const SPECS: readonly Spec[] = readdirSync(FOLDER)
  .filter(name => !name.endsWith('.ts'))
  .sort()
  .map(name => {
    const isFolder = statSync(path.join(FOLDER, name)).isDirectory();
    const file = path.join(FOLDER, isFolder ? `${name}/${name}.paving` : name);
    return { name, id: name.replace(/\..*$/, ''), file };
  });

/** The day on which they are looked at. */
const TODAY = '2026-06-01';

const paving = new Paving(new NodeFiles({ root: FOLDER, shownFrom: FOLDER }), () => TODAY);

/** A spec as it stands on the disk now, or with some of its files changed. */
export async function evaluate(file: string, changed: ReadonlyMap<string, string> = new Map()): Promise<Evaluation> {
  for (const known of paving.filesOf(file)) paving.forget(known);
  for (const [name, text] of changed) paving.setText(name, text);
  await paving.load(file);
  const evaluation = drain(paving.evaluate(file));
  for (const name of changed.keys()) paving.forget(name);
  if (evaluation === undefined) throw new Error(`${file} cannot be read: ${paving.problemOf(file)}`);
  return evaluation;
}
