// Rules as an editor asks about them.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { CompletionList, DefinitionLink, Hover, Location, WorkspaceEdit } from 'vscode-languageserver/node.js';
import { withPosition } from '../cursor.ts';
import { Client } from './client.ts';

const JOB = `job "Patio" { rules britain, treat base-on-clay as note }
use "town.paving"
site { soil clay }
area terrace {
  outline rectangle 4 x 3 m
  traffic foot
  base    type-1 90 mm
  edges   { all round meets house-wall }
}
`;
const TOWN = `source leaflet { kind handbook, title "Town leaflet" }
rule base-on-clay {
  concerns area
  when     soil is clay
  needs    base at least 125 mm (5 in)
  says     "The base of " area " is " missing " too thin."
  cites    leaflet
}
`;

let folder: string;
let client: Client;
const at = (name: string): string => pathToFileURL(path.join(folder, name)).href;
const asked = (name: string, text: string, words: string) => ({
  textDocument: { uri: at(name) },
  position: withPosition(text.replace(words.replace('‸', ''), () => words)).position
});

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-rules-'));
  writeFileSync(path.join(folder, 'job.paving'), JOB);
  writeFileSync(path.join(folder, 'town.paving'), TOWN);
  client = new Client();
  await client.start(folder);
  await client.open(at('job.paving'), JOB);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

test('a finding leads to its rule in one jump, in a file of the job and in what ships', async () => {
  const { diagnostics } = await client.findings(at('job.paving'), ({ diagnostics: all }) => all.length >= 2);
  const own = diagnostics.find(({ code }) => code === 'base-on-clay')!;
  const start = { line: 1, character: 5 };
  expect(own.relatedInformation).toEqual([
    {
      location: { uri: at('town.paving'), range: { start, end: { line: 1, character: 17 } } },
      message: 'This rule asks it.'
    }
  ]);
  expect(own.codeDescription?.href).toBe(`${at('town.paving')}#L2`);
  const shipped = diagnostics.find(({ code }) => code === 'base-too-thin')!;
  expect(shipped.codeDescription?.href).toBe('paving-page:/base-too-thin');
  const { uri, range } = shipped.relatedInformation!.at(-1)!.location;
  expect(uri).toBe('paving-shipped:/britain.paving');
  const library = path.resolve(import.meta.dirname, '../../language/library/britain.paving');
  expect(readFileSync(library, 'utf8').split('\n')[range.start.line]).toBe('rule base-too-thin {');
});

test('from `treat` to the rule and back, and a new name over both files', async () => {
  const treat = asked('job.paving', JOB, 'treat base-‸on-clay');
  const [link] = await client.ask<DefinitionLink[]>('textDocument/definition', treat);
  expect([link!.targetUri, link!.targetSelectionRange.start]).toEqual([at('town.paving'), { line: 1, character: 5 }]);
  const context = { includeDeclaration: true };
  expect(await client.ask<Location[]>('textDocument/references', { ...treat, context })).toHaveLength(2);
  const { changes } = await client.ask<WorkspaceEdit>('textDocument/rename', { ...treat, newName: 'clay-base' });
  expect(Object.keys(changes!).sort()).toEqual([at('job.paving'), at('town.paving')]);
});

test('completion and hover within a rule', async () => {
  await client.open(at('town.paving'), TOWN);
  const { items } = await client.ask<CompletionList>(
    'textDocument/completion',
    asked('town.paving', TOWN, 'when     ‸soil')
  );
  expect(items.map(({ label }) => label)).toEqual(expect.arrayContaining(['soil', 'base', 'heaviest-traffic']));
  const hover = await client.ask<Hover>('textDocument/hover', asked('town.paving', TOWN, 'needs    ba‸se'));
  expect(JSON.stringify(hover.contents)).toContain('Thickness of all stone under the bed');
});
