// Cost, days and things to buy, as an editor asks for them.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver/node.js';
import { COUPLED } from '../buying/coupled-job.ts';
import { withPosition } from '../cursor.ts';
import { Client } from './client.ts';

const ROOT = path.resolve(import.meta.dirname, '../..');

let folder: string;
let client: Client;
const uri = (): string => pathToFileURL(path.join(folder, 'job.paving')).href;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-figures-'));
  writeFileSync(path.join(folder, 'job.paving'), COUPLED);
  client = new Client();
  await client.start(folder);
  await client.open(uri(), COUPLED);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

const titles = async (): Promise<string[]> => (await client.lenses(uri())).map(({ command }) => command!.title);

test('a lens tells the cost and that the order is not proven; while the text is broken the last one, marked', async () => {
  const cost = (await titles())[1]!;
  expect(cost).toMatch(/^goods and delivery 453\.00 USD · .*cheapest order not proven$/);
  await client.change(uri(), COUPLED.replace('41 x 48 ft', '41 x'));
  await client.becomes(async () => (await titles())[1], /^before the error in line 8: goods and delivery 453\.00 USD/);
  await client.change(uri(), COUPLED);
  await client.becomes(async () => (await titles())[1], /^goods and delivery 453\.00 USD/);
});

test('hover on a material tells what to buy; on a variant it stands beside the job', async () => {
  const text = `${COUPLED}variant thin { area bed { bed stone 3/4 in } }\n`;
  await client.change(uri(), text);
  const told = async (words: string): Promise<string> => {
    const { position } = withPosition(text.replace(words.replace('‸', ''), () => words));
    return ((await client.hover(uri(), position.line, position.character))!.contents as MarkupContent).value;
  };
  expect(await told('material ‸stone')).toMatch(/^\*\*stone\*\* for Two loads or one\n[^]*\| loose, pit \|/);
  expect(await told('variant ‸thin')).toMatch(/^\*\*thin\*\*\n\n\| {2}\| as written \| thin \|/);
});

test('the server holds no solver', () => {
  for (const server of ['server.cjs', 'server-browser.js'])
    expect(readFileSync(path.join(ROOT, 'dist', server), 'utf8')).not.toMatch(/highs/i);
  expect(readFileSync(path.join(ROOT, 'dist/paving.cjs'), 'utf8')).toMatch(/highs/i);
});
