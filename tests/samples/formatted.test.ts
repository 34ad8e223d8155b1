import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatText } from '../../language/format/format.ts';
import { drain, Paving } from '../../language/paving.ts';
import { createParse } from '../../language/syntax/parse.ts';
import { NodeFiles } from '../../server/node-files.ts';
import { FILES, pathOf } from './samples.ts';

/* The formatted text of every sample and of every faulty spec means the same: the same JSON but for places. */
const FAULTY = path.resolve(import.meta.dirname, '../faulty');
const specs = [
  ...FILES.map(pathOf),
  ...readdirSync(FAULTY, { recursive: true, encoding: 'utf8' })
    .filter(file => file.endsWith('.paving'))
    .sort()
    .map(file => path.join(FAULTY, file))
];
const root = path.resolve(import.meta.dirname, '../..');
const shown = (file: string): string => path.relative(root, file).replaceAll(path.sep, '/');

const parse = createParse();
const paving = new Paving(new NodeFiles({ root, shownFrom: root }));

/** The job as JSON, with the text of the file and of all it uses as it stands, or formatted. */
async function jsonOf(file: string, formatted: boolean): Promise<string | undefined> {
  for (const used of paving.filesOf(file)) paving.forget(used);
  await paving.load(file);
  if (formatted) {
    for (const used of paving.filesOf(file)) {
      if (paving.problemOf(used) === undefined) paving.setText(used, formatText(readFileSync(used, 'utf8'), parse));
    }
  }
  const evaluation = drain(paving.evaluate(file));
  if (evaluation === undefined) return undefined;
  const findings = evaluation.findings.map(({ id, severity, message, target, values, source, related, fixes }) => {
    const said = message.replace(/ in line \d+/, '');
    const others = related.map(other => other.message);
    return { id, severity, said, target, values, source, others, fixes: fixes.map(fix => fix.title) };
  });
  const { quantities, workings } = evaluation.numbers ?? {};
  return JSON.stringify({ quantities, workings, findings }, undefined, 1);
}

describe.each(specs.map(file => ({ file, name: shown(file) })))('$name', ({ file }) => {
  it('means the same when formatted', async () => {
    expect(await jsonOf(file, true)).toBe(await jsonOf(file, false));
  });

  it('is formatted once and for all, and keeps every comment', () => {
    const text = readFileSync(file, 'utf8');
    const once = formatText(text, parse);
    expect(formatText(once, parse)).toBe(once);
    const words = (spec: string): string[] => spec.match(/[^\s,{}]+/g) ?? [];
    expect(words(once)).toEqual(words(text).map(word => word.replaceAll('−', '-')));
  });

  it('is left untouched where it cannot be read', () => {
    const text = readFileSync(file, 'utf8');
    if (parse(text).faults.length > 0) expect(formatText(text, parse)).toBe(text);
  });
});
