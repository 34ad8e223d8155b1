import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { folder, paving, root } from './run.ts';

const README = readFileSync(path.join(root, 'README.md'), 'utf8');
const JOB = /^ {3}```\n([\s\S]*?)^ {3}```$/m.exec(README)![1]!.replace(/^ {3}/gm, '');

test('the first job of the README has no findings and the numbers that the README tells', () => {
  const cwd = folder({ 'patio.paving': JOB });
  const checked = paving(['check', 'patio.paving'], { cwd });
  expect(checked.out).toContain('No findings');
  expect(checked.code).toBe(0);
  const step = /^3\. .*quantities patio\.paving.*$/m.exec(README)![0];
  const told = step.match(/[0-9]+(?:\.[0-9]+)?(?: [0-9]\/[0-9]+)? (?:sq ft|in|cu yd|short tons|ft)(?![\w])/g)!;
  expect(told).toEqual(['192 sq ft', '9 5/8 in', '5.01 cu yd', '3.97 cu yd', '7.51 short tons', '44 ft']);
  const { code, out } = paving(['quantities', 'patio.paving'], { cwd });
  expect(code).toBe(0);
  for (const number of told) expect(out.replaceAll('.00 sq ft', ' sq ft')).toContain(number);
  expect(step).toContain('102 whole slabs and 12 cut');
  expect(out).toMatch(/slab-16 +running-bond +102 +12 /);
});

test('the rule of the README asks what it says, and its fix writes that', () => {
  const rules = /^```\n(job "Path to the shed"[^]*?)^```$/m.exec(README)![1]!;
  const area =
    'site { soil clay, winters freeze }\narea path {\n outline rectangle 3 x 20 ft\n traffic foot\n base crushed-stone 4 in\n}\n';
  const cwd = folder({ 'path.paving': rules + area });
  const { code, out } = paving(['check', 'path.paving'], { cwd });
  expect(code).toBe(1);
  expect(out).toContain('The base of path, 4 in, is 1 in too thin: our town asks 5 in on clay.');
  expect(out).toContain('Source: Code: Paving leaflet of our town, 2025, page 3.');
  expect(out).toContain('Fix: Write `5 in`');
  expect(out).not.toContain('base-thinner-than-usual');
});

test('the base made thin is too thin, by how much and by whose word', () => {
  const cwd = folder({ 'thin.paving': JOB.replace('crushed-stone 6 in', 'crushed-stone 3 in') });
  const { code, out } = paving(['check', 'thin.paving'], { cwd });
  expect(code).toBe(1);
  expect(out).toContain('1 in too thin');
  expect(out).toContain('Source: Association guidance');
});

test('the prices of the README price the first job, and what they do not price is one note', () => {
  const prices = /^```\n(supplier stone-yard[^]*?)^```$/m.exec(README)![1]!;
  const cwd = folder({ 'patio.paving': `use "prices.paving"\n${JOB}`, 'prices.paving': prices });
  const day = ['--as-of', '2026-03-20'];
  const checked = paving(['check', 'patio.paving', 'prices.paving', ...day], { cwd });
  expect(checked.out.match(/ (?:error|warning|note) +[a-z-]+$/gm)).toEqual([
    expect.stringContaining('price-missing') as string
  ]);
  const { code, out } = paving(['order', 'patio.paving', ...day], { cwd });
  expect(code).toBe(0);
  expect(out).toMatch(/slab-16 .* pack layer of 15 /);
  expect(out).toContain('No order of these packs that covers the need costs less.');
});
