// The live plan, as a panel asks for it.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { CancellationTokenSource } from 'vscode-languageserver';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { applyPatch } from '../../extension/panel/plan/apply-patch.ts';
import type {
  LivePlan,
  PlaceOfThingResult,
  PlanPatch,
  PlanResult,
  SectionResult,
  ThingsAtResult
} from '../../server/plan-protocol.ts';
import { withPosition } from '../cursor.ts';
import { Client } from './client.ts';
import { PATIO } from './patio.ts';

const POINTS = `point A at (0, 0)
point B at (3 m, 0)

line across A to B
`;

const JOB = `${PATIO.replace('site {', 'use "points.paving"\n\nsite {')}
box lid in patio { rectangle 300 x 300 mm, centre (1, 1) m }
`;

let folder: string;
let client: Client;
const uriOf = (name: string): string => pathToFileURL(path.join(folder, name)).href;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-plan-'));
  writeFileSync(path.join(folder, 'points.paving'), POINTS);
  writeFileSync(path.join(folder, 'job.paving'), JOB);
  client = new Client();
  await client.start(folder);
  await client.open(uriOf('job.paving'), JOB);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

const ask = (name: string, has?: number): Promise<PlanResult> =>
  client.ask('paving/plan', { textDocument: { uri: uriOf(name) }, ...(has === undefined ? {} : { has }) });

async function whole(name: string): Promise<{ number: number; plan: LivePlan }> {
  const result = await ask(name);
  if (!('plan' in result)) throw new Error(JSON.stringify(result));
  return result;
}

async function patched(name: string, has: number): Promise<{ number: number; since: number; patch: PlanPatch }> {
  const result = await ask(name, has);
  if (!('patch' in result)) throw new Error(JSON.stringify(result));
  return result;
}

test('the first answer is the whole plan, after typing what differs from it; of another number the whole again', async () => {
  const first = await whole('job.paving');
  expect(first.plan.title).toBe('Small patio');
  expect(await ask('job.paving', first.number)).toEqual({ number: first.number, since: first.number, patch: {} });
  await client.change(uriOf('job.paving'), JOB.replace('3 x 4 m', '3 x 4.20 m'));
  const next = await patched('job.paving', first.number);
  expect(next.since).toBe(first.number);
  expect(next.number).not.toBe(first.number);
  const now = await whole('job.paving');
  expect(applyPatch(first.plan, next.patch)).toEqual(now.plan);
  expect(now.plan.things.find(({ key }) => key === 'area:patio')!.bounds).toEqual([0, 0, 3000, 4200]);
  expect('plan' in (await ask('job.paving', first.number))).toBe(true);
});

test('an answer that nobody waits for any more is not sent: what is asked next still gets what differs', async () => {
  const first = await whole('job.paving');
  await client.change(uriOf('job.paving'), JOB.replace('3 x 4 m', '3 x 4.20 m'));
  const given = new CancellationTokenSource();
  const params = { textDocument: { uri: uriOf('job.paving') }, has: first.number };
  const asked = client.ask<PlanResult>('paving/plan', params, given.token);
  given.cancel();
  await expect(asked).rejects.toThrow();
  expect((await patched('job.paving', first.number)).since).toBe(first.number);
});

test('a file that the job uses is drawn in its plan', async () => {
  await client.open(uriOf('points.paving'), POINTS);
  const owner = await client.ask('paving/planOwner', { textDocument: { uri: uriOf('points.paving') } });
  expect(owner).toEqual({ uri: uriOf('job.paving') });
});

test('while a line is broken its area stays, marked; without a job there is a problem, and then the plan again', async () => {
  const first = await whole('job.paving');
  await client.change(uriOf('job.paving'), JOB.replace('3 x 4 m', '3 x'));
  const broken = await patched('job.paving', first.number);
  expect(broken.patch.notes).toEqual(['area patio as it was before the error in line 10']);
  const shown = applyPatch(first.plan, broken.patch);
  expect(shown.shapes.filter(({ stale, content }) => !stale && content === 'units')).toEqual([]);
  await client.change(uriOf('job.paving'), JOB.replace(/^job [^}]*\}\n/, ''));
  expect(await ask('job.paving', broken.number)).toHaveProperty('problem');
  await client.change(uriOf('job.paving'), JOB);
  const mended = await patched('job.paving', broken.number);
  expect(applyPatch(shown, mended.patch)).toEqual(first.plan);
});

test('each of several jobs has its own plan; that of a closed one is let go', async () => {
  const first = await whole('job.paving');
  const other = PATIO.replace('Small patio', 'Another patio').replace('3 x 4 m', '5 x 4 m');
  writeFileSync(path.join(folder, 'other.paving'), other);
  await client.open(uriOf('other.paving'), other);
  const second = await whole('other.paving');
  expect(second.plan.title).toBe('Another patio');
  expect((await patched('job.paving', first.number)).patch).toEqual({});
  await client.close(uriOf('job.paving'));
  await client.open(uriOf('job.paving'), JOB);
  expect('plan' in (await ask('job.paving', first.number))).toBe(true);
  expect((await patched('other.paving', second.number)).patch).toEqual({});
});

test('a thing is led to its place, also in a file that the job uses; what has none to nothing', async () => {
  const placeOf = async (thing: string): Promise<string | null> => {
    const params = { textDocument: { uri: uriOf('job.paving') }, thing };
    const { place } = await client.ask<PlaceOfThingResult>('paving/placeOfThing', params);
    return place && `${path.basename(place.uri)}:${place.range.start.line + 1}`;
  };
  const { plan } = await whole('job.paving');
  const line = (words: string): string => `job.paving:${JOB.slice(0, JOB.indexOf(words)).split('\n').length}`;
  const cut = plan.things.find(({ kind }) => kind === 'Cut units')!;
  expect(await placeOf(cut.key)).toBe(line('paving  block'));
  expect(await placeOf('area:patio/unit/block')).toBe(line('paving  block'));
  expect(await placeOf('area:patio')).toBe(line('area patio'));
  expect(await placeOf('area:patio/edges/near')).toBe(line('edges '));
  expect(await placeOf('area:patio/corner-3')).toBe(line('outline'));
  expect(await placeOf('area:patio/start')).toBe(line('area patio'));
  expect(await placeOf('box:lid')).toBe(line('box lid'));
  expect(await placeOf('point:B')).toBe('points.paving:2');
  expect(await placeOf('gate:nowhere')).toBeNull();
  await client.change(uriOf('job.paving'), JOB.replace('sharp-sand', 'no-such-sand'));
  const finding = (await whole('job.paving')).plan.things.find(({ kind }) => kind === 'Findings')!;
  expect(await placeOf(finding.key)).toBe(line('bed '));
});

test('the cursor stands in an edge and its area, in a box, in a point of a used file, in nothing', async () => {
  const at = async (name: string, text: string, words: string): Promise<readonly string[]> => {
    const { position } = withPosition(text.replace(words.replace('‸', ''), () => words));
    const params = { textDocument: { uri: uriOf('job.paving') }, uri: uriOf(name), position };
    return (await client.ask<ThingsAtResult>('paving/thingsAt', params)).things;
  };
  expect((await at('job.paving', JOB, 'all round meets house‸-wall')).at(-1)).toBe('area:patio');
  expect((await at('job.paving', JOB, 'all round meets house‸-wall'))[0]).toMatch(/^area:patio\/edges\//);
  expect(await at('job.paving', JOB, 'type-1 ‸150')).toEqual(['area:patio']);
  expect(await at('job.paving', JOB, 'traffic ‸foot')).toEqual(['area:patio']);
  expect(await at('job.paving', JOB, '300 x ‸300 mm')).toEqual(['box:lid']);
  expect(await at('job.paving', JOB, 'rules ‸britain')).toEqual([]);
  await client.open(uriOf('points.paving'), POINTS);
  expect(await at('points.paving', POINTS, 'at (3 ‸m')).toEqual(['point:B']);
});

test('a section along a line of the job, and from one place to another; one place is no line', async () => {
  const along = (line: object): Promise<SectionResult> =>
    client.ask('paving/section', { textDocument: { uri: uriOf('job.paving') }, along: line });
  const { plan } = await whole('job.paving');
  expect(plan.sections).toEqual([{ key: 'line:across', name: 'across' }]);
  const named = await along({ key: 'line:across' });
  expect(named).toHaveProperty('drawing.name', 'svg');
  expect(named).toHaveProperty('text', expect.stringContaining('Section across of Small patio'));
  const free = await along({ from: [500, 1000], to: [2500, 1000] });
  expect(free).toHaveProperty('text', expect.stringContaining('Section from (0.500 m, 1.000 m) to (2.500 m, 1.000 m)'));
  expect(free).toHaveProperty('text', expect.stringContaining('2.000 m long'));
  expect(await along({ from: [500, 1000], to: [500, 1000] })).toHaveProperty('problem');
  expect(await along({ key: 'line:gone' })).toHaveProperty('problem');
});
