import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';
import { seeded } from './seeded.ts';

const samples = path.resolve(import.meta.dirname, '../../samples');
const texts = readdirSync(samples)
  .filter(name => name.endsWith('.paving'))
  .map(name => readFileSync(path.join(samples, name), 'utf8'));

const SCRAPS = [
  '{',
  '}',
  '(',
  ')',
  '"',
  ',',
  'x',
  ' to ',
  '-',
  '/',
  '0',
  '1e9',
  ' in',
  ' per ',
  '½',
  "'",
  '\n',
  'area ',
  'edges {',
  '€',
  ' as ',
  '//',
  '99999999999999999999',
  ' ton',
  ' of '
];

function mangled(text: string, below: (limit: number) => number): string {
  let result = text;
  for (let times = 1 + below(4); times > 0; times--) {
    const at = below(result.length);
    const length = below(30);
    const kind = below(4);
    if (kind === 0) result = result.slice(0, at) + result.slice(at + length);
    else if (kind === 1) result = result.slice(0, at) + SCRAPS[below(SCRAPS.length)]! + result.slice(at);
    else if (kind === 2) result = result.slice(0, at) + result.slice(at, at + length * 5) + result.slice(at);
    else {
      const from = below(result.length);
      result = result.slice(0, at) + result.slice(from, from + length) + result.slice(at + length);
    }
  }
  return result;
}

test('whatever is typed: nothing throws, every finding has a real place and plain words, and no number is odd', () => {
  const below = seeded(2_026);
  const paving = new Paving(inMemory({}));
  let withFindings = 0;
  let withNumbers = 0;
  for (let run = 0; run < 800; run++) {
    const text = mangled(texts[run % texts.length]!, below);
    paving.setText('job.paving', text);
    const evaluation = drain(paving.evaluate('job.paving'))!;
    const lines = text.split('\n');
    for (const finding of evaluation.findings) {
      const place = JSON.stringify(finding);
      expect(finding.line, place).toBeGreaterThanOrEqual(1);
      expect(finding.line, place).toBeLessThanOrEqual(lines.length);
      expect(finding.endLine, place).toBeLessThanOrEqual(lines.length);
      expect(finding.column, place).toBeLessThanOrEqual(lines[finding.line - 1]!.length + 1);
      expect(finding.endColumn, place).toBeLessThanOrEqual(lines[finding.endLine - 1]!.length + 1);
      const ends = finding.endLine * 1e6 + finding.endColumn;
      expect(ends, place).toBeGreaterThanOrEqual(finding.line * 1e6 + finding.column);
      // What the user wrote may hold any word; ours may not.
      const ours = finding.message.replace(/`[^`]*`/g, '').replace(/\b(?:NaN|token)-[\w-]+/g, '');
      expect(ours, place).not.toMatch(
        /\b(?:tokens?|expecting|EOF|parser|ID|undefined|null|NaN|Infinity|exception|object)\b/
      );
    }
    if (evaluation.findings.length > 0) withFindings++;
    if (evaluation.numbers === undefined) continue;
    if (evaluation.numbers.quantities.areas.length > 0) withNumbers++;
    expect(JSON.stringify(evaluation.numbers.quantities), text).not.toContain(':null');
  }
  console.log(`800 mangled texts: ${withFindings} with findings, ${withNumbers} with numbers of some area`);
  expect(withFindings).toBeGreaterThan(600);
  expect(withNumbers).toBeGreaterThan(150);
});

test('a good text read right after the worst ones is read as if nothing had been', () => {
  const fresh = new Paving(inMemory({}));
  fresh.setText('job.paving', texts[0]!);
  const expected = drain(fresh.evaluate('job.paving'))!;
  const paving = new Paving(inMemory({}));
  const worst = [
    `let a = ${'('.repeat(20_000)}`,
    `let a = 1${' * (1 + 1'.repeat(3_000)}`,
    '{'.repeat(50_000),
    '"'.repeat(1_001),
    'area '.repeat(20_000),
    'a'.repeat(900_000),
    `${'let a = b\n'.repeat(5_000)}`
  ];
  for (const text of worst) {
    paving.setText('bad.paving', text);
    expect(drain(paving.evaluate('bad.paving'))!.findings.length).toBeGreaterThan(0);
    paving.setText('job.paving', `${texts[0]!}\n// again ${text.length}\n`);
    const again = drain(paving.evaluate('job.paving'))!;
    expect(again.findings).toEqual(expected.findings);
    expect(again.numbers!.quantities).toEqual(expected.numbers!.quantities);
  }
});

test('lets that double each other, and a long row of them, end in a finding', () => {
  const paving = new Paving(inMemory({}));
  const doubling = ['let a0 = 99999999', ...Array.from({ length: 60 }, (_, i) => `let a${i + 1} = a${i} * a${i}`)].join(
    '\n'
  );
  const row = [...Array.from({ length: 5_000 }, (_, i) => `let b${i} = b${i + 1} + 1 mm`), 'let b5000 = 1 mm'].join(
    '\n'
  );
  for (const [text, id] of [
    [doubling, 'number-too-large'],
    [row, 'let-in-circle']
  ] as const) {
    paving.setText('job.paving', `job "Lets" { rules britain }\n${text}\n`);
    expect(drain(paving.evaluate('job.paving'))!.findings.map(finding => finding.id)).toContain(id);
  }
});
