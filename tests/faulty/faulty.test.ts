import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { FAULTS } from '../../language/findings/fault-list.ts';
import type { Finding } from '../../language/findings/finding.ts';
import type { RuleCase } from '../../language/job/rule.ts';
import { SHIPPED_RULEBOOKS, SHIPPED_RULES } from '../../language/library/shipped.ts';
import type { Evaluation } from '../../language/paving.ts';
import { withDrawings, withoutDrawings } from './drawing.ts';
import { rulesOf } from '../shipped-rules.ts';
import { needsOf, needTold } from './needs.ts';
import { badlyTold } from './plain-words.ts';
import { evaluate, FOLDER, SPECS, type Spec } from './specs.ts';

/*
 * The catalogue of findings and its test in one: for each finding `ID.paving`, `ID.VARIANT.paving` or a folder
 * `ID/ID.paving` with the files it uses, with all its findings drawn into it (drawing.ts).
 * `UPDATE=1 npx vitest run --config .config/vitest.config.ts tests/faulty` draws them anew; read the difference.
 */
const UPDATE = process.env.UPDATE === '1';

/** Findings that no text provokes, and why. */
const NO_TEXT: Readonly<Record<string, string>> = {
  internal: 'a fault of this program: a text that provokes it is to be put right, not kept',
  'text-unreadable': 'the same: the parser came upon something that its makers did not foresee'
};

/** Findings whose text is too long to be kept: made in limits.test.ts. */
const MADE = ['text-too-long', 'too-many-sides', 'use-too-many'];

/**
 * Draws anew until nothing moves: drawings take up lines, and a few messages name a line. A spec that has lost the finding
 * it stands for keeps its drawing.
 */
async function update({ file, id }: Spec): Promise<Evaluation> {
  for (let round = 0; round < 5; round++) {
    const evaluation = await evaluate(file);
    const drawn = evaluation.texts.map(({ file: shown, text }) => ({
      shown,
      text,
      drawn: withDrawings(text, findingsIn(evaluation, shown))
    }));
    const changed = drawn.filter(one => one.drawn !== one.text);
    if (changed.length === 0 || !evaluation.findings.some(finding => finding.id === id)) return evaluation;
    for (const one of changed) writeFileSync(path.join(FOLDER, one.shown), one.drawn);
  }
  throw new Error(`The drawings of ${file} never come to rest.`);
}

function findingsIn(evaluation: Evaluation, file: string): Finding[] {
  return evaluation.findings.filter(finding => finding.file === file);
}

describe('the catalogue', () => {
  const ids = [...new Set([...Object.keys(FAULTS), ...SHIPPED_RULES])];
  const kept = [...new Set(SPECS.map(spec => spec.id))];

  it('has a faulty spec for each finding, and no other', () => {
    const wanted = ids.filter(id => !(id in NO_TEXT) && !MADE.includes(id));
    expect([...kept].sort()).toEqual([...wanted].sort());
  });

  it('knows every finding that it excuses', () => {
    expect([...Object.keys(NO_TEXT), ...MADE].filter(id => !ids.includes(id))).toEqual([]);
  });

  it('provokes every need of every shipped rule', async () => {
    const told = new Set<string>();
    for (const { file, id } of SPECS) {
      if (!SHIPPED_RULES.includes(id)) continue;
      const { findings, job } = await evaluate(file);
      for (const finding of findings)
        for (const rule of job?.rules.filter(({ name }) => name === finding.id) ?? [])
          told.add(needTold(finding, rule));
    }
    const needs = RULES.flatMap(rule => needsOf(rule).map(({ name }) => name));
    expect([...new Set(needs)].filter(name => !told.has(name))).toEqual([]);
  });

  it('tells needs apart that say nearly the same', () => {
    const rule = RULES.find(({ key }) => key === 'rule:britain/base-thinner-than-usual')!;
    const about = (needed: string): string =>
      `The base of drive, 150 mm, is 50 mm thinner than usual: ${needed} is usual under cars on soil with a bearing ratio of 4 %.`;
    const [{ source }] = rule.cases as [RuleCase];
    const told = ['300 mm', '225 mm', '200 mm', '250 mm'].map(needed =>
      needTold({ message: about(needed), source }, rule)
    );
    expect(told.slice(0, 3)).toEqual(needsOf(rule).map(({ name }) => name));
    expect(told[3]).toBe('');
  });
});

/** Every rule that ships. */
const RULES = SHIPPED_RULEBOOKS.flatMap(name => rulesOf([name]));

describe.each(SPECS)('$name', spec => {
  const { id, file } = spec;

  it('has the findings that are drawn into it', async () => {
    const evaluation = UPDATE ? await update(spec) : await evaluate(file);
    expect(evaluation.findings.map(finding => finding.id)).toContain(id);
    for (const { file: shown, text } of evaluation.texts)
      expect(withDrawings(text, findingsIn(evaluation, shown))).toBe(text);
    const files = evaluation.texts.map(({ file: shown }) => shown);
    expect(evaluation.findings.filter(finding => !files.includes(finding.file))).toEqual([]);
  });

  it('says so in plain words, at real places', async () => {
    expect(badlyTold(await evaluate(file))).toEqual([]);
  });

  it('names severity and family as the catalogue has them', async () => {
    for (const finding of (await evaluate(file)).findings) {
      const severities = finding.family === 'fault' ? [FAULTS[finding.id]?.severity] : severitiesOf(finding.id);
      expect(severities, finding.id).toContain(finding.severity);
      expect(finding.source !== undefined, `${finding.id} names a source`).toBe(finding.family === 'rule');
    }
  });

  it('has the same findings without the drawings, moved up', async () => {
    const before = await evaluate(file);
    const text = readFileSync(file, 'utf8');
    const after = await evaluate(file, new Map([[file, withoutDrawings(text)]]));
    const said = ({ findings }: Evaluation): string[] =>
      findings.map(finding =>
        [finding.id, finding.column, finding.endColumn, finding.message.replace(/line \d+/, 'line')].join(' ')
      );
    expect(said(after)).toEqual(said(before));
  });
});

function severitiesOf(id: string): string[] {
  return RULES.filter(rule => rule.name === id).map(rule => rule.severity);
}
