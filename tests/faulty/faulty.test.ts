import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { FAULTS } from '../../language/findings/fault-list.ts';
import type { Finding, Fix } from '../../language/findings/finding.ts';
import { RULES } from '../../language/findings/rules-table.ts';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { MOST_FILES, type SpecFiles } from '../../language/project.ts';
import { MOST_CHARACTERS } from '../../language/syntax/limits.ts';
import { NodeFiles } from '../../server/node-files.ts';
import { withDrawings, withoutDrawings } from './drawing.ts';
import { expectPlainAndPlaced } from './plain-words.ts';

/*
 * The catalogue of findings and its test in one: for each finding `ID.paving`, `ID.VARIANT.paving` or a folder
 * `ID/ID.paving` with the files it uses, with all its findings drawn into it (drawing.ts).
 * `UPDATE=1 npx vitest run --config .config/vitest.config.ts tests/faulty` draws them anew; read the difference.
 */
const FOLDER = import.meta.dirname;
const UPDATE = process.env.UPDATE === '1';

/** Findings that no text provokes, and why. */
const NO_TEXT: Readonly<Record<string, string>> = {
  internal: 'a fault of this program: a text that provokes it is to be put right, not kept',
  'text-unreadable': 'the same: the parser came upon something that its makers did not foresee',
  'density-unknown': 'every role has a shipped material, from which densities that are not said are taken'
};

/** Findings whose text is too long to be kept: made here. */
const GENERATED = ['text-too-long', 'use-too-many'];

interface Spec {
  readonly name: string;
  readonly id: string;
  readonly file: string;
}

const SPECS: readonly Spec[] = readdirSync(FOLDER)
  .filter(name => !name.endsWith('.ts'))
  .sort()
  .map(name => {
    const isFolder = statSync(path.join(FOLDER, name)).isDirectory();
    const file = path.join(FOLDER, isFolder ? `${name}/${name}.paving` : name);
    return { name, id: name.replace(/\..*$/, ''), file };
  });

async function evaluate(file: string, changed?: { readonly file: string; readonly text: string }): Promise<Evaluation> {
  const paving = new Paving(new NodeFiles({ root: FOLDER, shownFrom: FOLDER }));
  if (changed !== undefined) paving.setText(changed.file, changed.text);
  await paving.load(file);
  const evaluation = drain(paving.evaluate(file));
  if (evaluation === undefined) throw new Error(`${file} cannot be read: ${paving.problemOf(file)}`);
  return evaluation;
}

/** Draws anew until nothing moves: drawings take up lines, and a few messages name a line. */
async function update(file: string): Promise<Evaluation> {
  for (let round = 0; round < 5; round++) {
    const evaluation = await evaluate(file);
    const changed = evaluation.texts.filter(({ file: shown, text }) => {
      const drawn = withDrawings(text, findingsIn(evaluation, shown));
      if (drawn === text) return false;
      writeFileSync(path.join(FOLDER, shown), round === 0 ? withDrawings(text, findingsIn(evaluation, shown)) : drawn);
      return true;
    });
    if (changed.length === 0) return evaluation;
  }
  throw new Error(`The drawings of ${file} never come to rest.`);
}

function findingsIn(evaluation: Evaluation, file: string): Finding[] {
  return evaluation.findings.filter(finding => finding.file === file);
}

describe('the catalogue', () => {
  const ids = [...new Set([...Object.keys(FAULTS), ...RULES.map(rule => rule.id)])];
  const kept = [...new Set(SPECS.map(spec => spec.id))];

  it('has a faulty spec for each finding, and no other', () => {
    const wanted = ids.filter(id => !(id in NO_TEXT) && !GENERATED.includes(id));
    expect(kept.toSorted()).toEqual(wanted.toSorted());
  });

  it('knows every finding that it excuses', () => {
    expect([...Object.keys(NO_TEXT), ...GENERATED].filter(id => !ids.includes(id))).toEqual([]);
  });

  it('provokes every row of the table of rules', async () => {
    const provoked = new Set<string>();
    for (const { file, id } of SPECS) {
      if (!RULES.some(rule => rule.id === id)) continue;
      for (const finding of (await evaluate(file)).findings) provoked.add(rowOf(finding));
    }
    expect(RULES.map(rowOf).filter(row => !provoked.has(row))).toEqual([]);
  });
});

function rowOf({ id, severity, source }: { id: string; severity: string; source?: string }): string {
  return `${id}, ${severity}, ${source ?? ''}`;
}

describe.each(SPECS)('$name', ({ id, file }) => {
  it('has the findings that are drawn into it', async () => {
    const evaluation = UPDATE ? await update(file) : await evaluate(file);
    expect(evaluation.findings.map(finding => finding.id)).toContain(id);
    for (const { file: shown, text } of evaluation.texts) expect(withDrawings(text, findingsIn(evaluation, shown))).toBe(text);
    const files = evaluation.texts.map(({ file: shown }) => shown);
    expect(evaluation.findings.filter(finding => !files.includes(finding.file))).toEqual([]);
  });

  it('says so in plain words, at real places', async () => {
    expectPlainAndPlaced(await evaluate(file));
  });

  it('names severity and family as the catalogue has them', async () => {
    for (const finding of (await evaluate(file)).findings) {
      const severities = finding.family === 'fault' ? [FAULTS[finding.id]?.severity] : severitiesOf(finding.id);
      expect(severities, finding.id).toContain(finding.severity);
      expect(finding.source !== undefined, `${finding.id} names a source`).toBe(finding.family === 'rule');
    }
  });

  it('loses each finding by its fix', async () => {
    const before = await evaluate(file);
    for (const finding of before.findings) {
      for (const fix of finding.fixes) {
        const after = await evaluate(file, fixed(before, fix));
        const still = after.findings.filter(other => other.id === finding.id && other.line === finding.line && other.message === finding.message);
        expect(still, `${finding.message} ${fix.title}`).toEqual([]);
      }
    }
  });

  it('has the same findings without the drawings, moved up', async () => {
    const before = await evaluate(file);
    const text = readFileSync(file, 'utf8');
    const after = await evaluate(file, { file, text: withoutDrawings(text) });
    const said = ({ findings }: Evaluation): string[] =>
      findings.map(finding => [finding.id, finding.column, finding.endColumn, finding.message.replace(/line \d+/, 'line')].join(' '));
    expect(said(after)).toEqual(said(before));
  });
});

function severitiesOf(id: string): string[] {
  return RULES.filter(rule => rule.id === id).map(rule => rule.severity);
}

function fixed(evaluation: Evaluation, fix: Fix): { file: string; text: string } {
  const shown = new Set(fix.edits.map(edit => edit.place.file));
  expect(shown.size, `${fix.title} changes one file`).toBe(1);
  const [file] = shown;
  const lines = evaluation.texts.find(other => other.file === file)!.text.split('\n');
  for (const { place, text } of fix.edits) {
    expect(place.endLine, 'an edit within a line').toBe(place.line);
    const line = lines[place.line - 1]!;
    lines[place.line - 1] = line.slice(0, place.column - 1) + text + line.slice(place.endColumn - 1);
  }
  return { file: path.join(FOLDER, file!), text: lines.join('\n') };
}

describe('made here', () => {
  const job = 'job "Patio" { rules north-america }\n';

  async function evaluateTexts(texts: Readonly<Record<string, string>>): Promise<Evaluation> {
    const files: SpecFiles = {
      resolve: (_, written) => written,
      read: name => Promise.resolve(texts[name] === undefined ? { problem: 'missing' } : { text: texts[name] }),
      show: name => name
    };
    const paving = new Paving(files);
    await paving.load('job.paving');
    return drain(paving.evaluate('job.paving'))!;
  }

  it('text-too-long: one character too many, and not one fewer', async () => {
    const filled = (length: number): string => job + '/'.repeat(length - job.length);
    expect((await evaluateTexts({ 'job.paving': filled(MOST_CHARACTERS) })).findings).toEqual([]);
    const evaluation = await evaluateTexts({ 'job.paving': filled(MOST_CHARACTERS + 1) });
    expect(evaluation.findings.map(({ id, line, column, message }) => ({ id, line, column, message }))).toEqual([
      {
        id: 'text-too-long',
        line: 1,
        column: 1,
        message: 'This file has 1,000,001 characters; at most 1,000,000 are read. Part it into several files with `use`.'
      }
    ]);
    expectPlainAndPlaced(evaluation);
  });

  it('use-too-many: one file too many, and not one fewer', async () => {
    const parts = (count: number): Record<string, string> => {
      const names = Array.from({ length: count }, (_, index) => `part-${index + 1}.paving`);
      const main = job + names.map(name => `use "${name}"\n`).join('');
      return { 'job.paving': main, ...Object.fromEntries(names.map(name => [name, '// nothing yet\n'])) };
    };
    // The job's own file counts.
    expect((await evaluateTexts(parts(MOST_FILES - 1))).findings).toEqual([]);
    const evaluation = await evaluateTexts(parts(MOST_FILES));
    expect(evaluation.findings.map(({ id, line, column, message }) => ({ id, line, column, message }))).toEqual([
      { id: 'use-too-many', line: MOST_FILES + 1, column: 5, message: 'More than 200 files are used.' }
    ]);
    expectPlainAndPlaced(evaluation);
  });
});
