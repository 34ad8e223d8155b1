import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import type { Diagnostic, MarkupContent } from 'vscode-languageserver/node.js';
import { rowsOf } from '../../language/views/rows.ts';
import type { FindingJson } from '../../language/views/json/finding-json.ts';
import type { QuantitiesJson } from '../../language/views/json/quantities-json.ts';
import { decode } from '../../server/node-files.ts';
import { paving } from '../cli/run.ts';
import { Client } from './client.ts';

const ROOT = path.resolve(import.meta.dirname, '../..');
const SEVERITIES = ['', 'error', 'warning', 'note'];

/** Folders whose specs are opened in the editor and checked on the command line: all samples, and some of the faulty ones. */
const FOLDERS = [
  { name: 'samples', every: 1 },
  { name: 'tests/faulty', every: 4 }
];

test.each(FOLDERS)(
  '$name: the server finds what the command line finds, in the same places',
  { timeout: 300_000 },
  async ({ name, every }) => {
    const folder = path.join(ROOT, name);
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      // No editor opens as text what holds no text.
      .filter(file => file.endsWith('.paving') && 'text' in decode(readFileSync(path.join(folder, file))))
      .sort()
      .filter((_, index) => index % every === 0);
    const client = new Client();
    await client.start(folder);
    let compared = 0;
    for (const file of files) {
      const uri = pathToFileURL(path.join(folder, file)).href;
      await client.open(uri, readFileSync(path.join(folder, file), 'utf8'));
      await client.findings(uri, params => params.version === 1);
      // Findings of used files come right behind: an answer to a question comes after them.
      await client.hover(uri, 0, 0);
      const { out } = paving(['check', '--format', 'json', file], { cwd: folder });
      const { findings } = JSON.parse(out) as { findings: FindingJson[] };
      const told = [...client.published.values()].flatMap(({ uri: at, diagnostics }) =>
        diagnostics.map(diagnostic => asFinding(path.relative(folder, new URL(at).pathname), diagnostic))
      );
      const expected = findings
        .filter(({ accepted }) => accepted === undefined)
        .map(({ file: at, line, column, endLine, endColumn, severity, id, message, source }) => ({
          ...{ file: at, line, column, endLine, endColumn, severity, id },
          message: source === undefined ? message : `${message}\n${source}`
        }));
      expect(told.sort(inOrder), file).toEqual(expected.sort(inOrder));
      compared += expected.length;
      await client.close(uri);
      await client.findings(uri, params => params.diagnostics.length === 0);
    }
    await client.stop();
    console.log(`${name}: ${files.length} files, ${compared} findings`);
  }
);

function asFinding(file: string, { range, severity, code, message }: Diagnostic): object {
  return {
    file: decodeURIComponent(file),
    line: range.start.line + 1,
    column: range.start.character + 1,
    endLine: range.end.line + 1,
    endColumn: range.end.character + 1,
    severity: SEVERITIES[severity!],
    id: String(code),
    message
  };
}

function inOrder(left: object, right: object): number {
  return JSON.stringify(left) < JSON.stringify(right) ? -1 : 1;
}

test('every sample: the server shows the numbers that the command line gives', { timeout: 300_000 }, async () => {
  const folder = path.join(ROOT, 'samples');
  const client = new Client();
  await client.start(folder);
  let rows = 0;
  const jobs = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    file => file.endsWith('.paving') && /^job /m.test(readFileSync(path.join(folder, file), 'utf8'))
  );
  for (const file of jobs) {
    const text = readFileSync(path.join(folder, file), 'utf8');
    const system = /feet-and-inches|hill-town/.test(text) ? 'imperial' : 'metric';
    const { out } = paving(['quantities', '--format', 'json', file], { cwd: folder });
    const [job] = (JSON.parse(out) as QuantitiesJson).jobs;
    const uri = pathToFileURL(path.join(folder, file)).href;
    await client.open(uri, text);
    await client.findings(uri, params => params.version === 1);
    for (const area of job!.areas) {
      const line = text.split('\n').findIndex(each => each.startsWith(`area ${area.name} `));
      if (line < 0) continue;
      const hover = await client.hover(uri, line, 'area '.length);
      const shown = (hover!.contents as MarkupContent).value;
      for (const { words, value } of rowsOf('area', area, system)) {
        expect(shown).toContain(`| ${words} | ${value} |`);
        rows++;
      }
      const sum = (of: 'whole' | 'cut'): number => area.laying!.reduce((total, laying) => total + laying[of], 0);
      const cut = sum('cut');
      // More than three kinds are told together.
      const whole = area.laying!.length > 3 ? sum('whole') : area.laying!.map(laying => laying.whole).join(' + ');
      const lens = (await client.lenses(uri)).find(({ range }) => range.start.line === line);
      expect(lens!.command!.title).toContain(` ${whole} whole, ${cut} cut `);
    }
  }
  await client.stop();
  expect(rows).toBeGreaterThanOrEqual(3 * 8);
});
