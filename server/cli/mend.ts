import { withSafeFixes } from '../../language/editing/safe-fixes.ts';
import type { Finding } from '../../language/findings/finding.ts';
import { drain, type Evaluation, type Paving } from '../../language/paving.ts';
import { numberOf } from '../../language/views/text/findings-text.ts';
import type { Folders, Reading } from './reading.ts';
import type { SpecPath } from './spec-paths.ts';
import { writeBack } from './write-back.ts';

export interface Mended {
  /** What was done, a sentence for each file that has changed. */
  readonly said: readonly string[];
  /** The text that came over standard input, mended or not. */
  readonly standardInput?: string;
}

/** Makes the safe fixes in the files asked for, each in the job that it is part of; no other file is touched. */
export async function mend(specs: readonly SpecPath[], { evaluations }: Reading, folders: Folders): Promise<Mended> {
  const said: string[] = [];
  let standardInput: string | undefined;
  for (const { file: main } of evaluations) {
    const { paving } = folders.of(main);
    for (const spec of specs) {
      const now = await evaluated(paving, main);
      const { show } = folders.of(spec.file);
      const text = now?.texts.find(({ file }) => file === show)?.text;
      if (now === undefined || text === undefined) continue;
      const changed = await mendedText(paving, main, { ...spec, show, text }, now.findings);
      if (spec.fromStandardInput) standardInput = changed?.text ?? text;
      if (changed === undefined) continue;
      if (!spec.fromStandardInput && !(await writeBack(spec.file, show, changed.text))) continue;
      if (spec.fromStandardInput) paving.setText(spec.file, changed.text);
      else folders.changed(spec.file);
      said.push(`Mended ${numberOf(changed.count, 'finding')} in ${show}.`);
    }
  }
  return { said, ...(standardInput === undefined ? {} : { standardInput }) };
}

async function evaluated(paving: Paving, main: string): Promise<Evaluation | undefined> {
  await paving.load(main);
  return drain(paving.evaluate(main, 'findings'));
}

interface SpecNow extends SpecPath {
  readonly show: string;
  readonly text: string;
}

async function mendedText(
  paving: Paving,
  main: string,
  { file, show, text }: SpecNow,
  findings: readonly Finding[]
): Promise<{ readonly text: string; readonly count: number } | undefined> {
  let left = findings;
  const mended = await withSafeFixes(show, text, findings, changed => {
    left = drain(paving.tryOut(main, file, changed))?.findings ?? [];
    return Promise.resolve(left);
  });
  const count = (found: readonly Finding[]): number => found.filter(finding => isMendable(finding, show)).length;
  return mended === undefined ? undefined : { text: mended, count: count(findings) - count(left) };
}

function isMendable({ fixes }: Finding, show: string): boolean {
  return fixes.some(({ safe, edits }) => safe && edits.every(({ place }) => place.file === show));
}
