// What is offered in heights, gates, drains, pipes and the log: the cursor is drawn as ‸.
import { expect, test } from 'vitest';
import { completionsAt } from '../../language/editing/completion/completion.ts';
import { Paving } from '../../language/paving.ts';
import { withCursor } from '../cursor.ts';
import { inMemory } from './in-memory.ts';

const paving = new Paving(inMemory({}));

const JOB = `job "Terrace" { rules north-america }
site { soil clay, benchmark door-sill }
unit slab-16 { size 15 7/8 x 15 7/8 x 2 in }
point A at (0, 0)
point B at (18 ft, 0)
point C at (18 ft, 12 ft)
existing old-walk
line spine A to B to C
area terrace { outline A to B to C }
box valves in terrace { circle 10 in across, centre (6 ft, 3 ft) }
`;

function offers(drawn: string): { readonly label: string; readonly text: string }[] {
  const { text, start } = withCursor(JOB + drawn);
  paving.setText('job.paving', text);
  const { text: spec, project } = paving.look('job.paving')!;
  return completionsAt(spec, project, start).map(({ label, text }) => ({ label, text }));
}

const labels = (drawn: string): string[] => offers(drawn).map(({ label }) => label);
const textOf = (drawn: string, wanted: string): string | undefined =>
  offers(drawn).find(({ label }) => label === wanted)?.text;

const LASER = 'heights by laser on 2026-04-18, door-sill reads 31 1/4 in {\n  ';

test('a line of heights is of the ground or of a thing that is there, each once', () => {
  expect(labels(`${LASER}‸\n}`)).toEqual(['ground', 'old-walk']);
  expect(labels(`${LASER}ground A 34 in\n  ‸\n}`)).toEqual(['old-walk', 'ground']);
  expect(textOf(`${LASER}‸\n}`, 'old-walk')).toBe('old-walk A 34 in');
  expect(textOf('heights {\n  ‸\n}', 'ground')).toBe('ground A 6 1/4 in below door-sill');
});

test('in a row the next point follows; what a rod reads is below nothing', () => {
  expect(labels(`${LASER}ground ‸\n}`)).toEqual(['A', 'B', 'C']);
  expect(labels(`${LASER}ground A 34 in ‸\n}`)).toEqual(['B', 'C']);
  expect(labels('heights {\n  ground A 3 in ‸\n}')).toEqual(expect.arrayContaining(['below', 'above']));
});

test('a line of the log begins with the day of the line before', () => {
  const lines = 'log {\n  2026-05-09 done base of terrace\n  ‸\n}';
  expect(labels(lines)).toEqual(['delivered', 'done', 'measured', 'soft-spot']);
  expect(textOf(lines, 'done')).toBe('2026-05-09 done dig of terrace');
  expect(labels('log {\n  2026-05-09 ‸\n}')).toEqual(expect.arrayContaining(['delivered', 'done', 'soft-spot']));
  expect(labels('log {\n  2026-05-09 done base of ‸\n}')).toEqual(['terrace']);
});

test('names lead to what can stand there', () => {
  expect(labels('route way along ‸')).toEqual(['spine']);
  expect(labels('pipe p {\n  from ‸\n}')).toEqual(['valves', 'A', 'B', 'C']);
  expect(labels('gate g {\n  hinge 2 ft along A to B, leaf 3 ft towards ‸\n}')).toEqual(['A', 'B', 'C']);
  expect(labels('point D taped 3 ft from ‸')).toEqual(['A', 'B', 'C']);
});

test('whole blocks, as they are usually written', () => {
  expect(textOf('‸', 'gate')).toContain('opens 95 degrees into terrace');
  expect(textOf('‸', 'drain')).toContain('channel along A to B, 5 in wide');
  expect(textOf('‸', 'heights')).toContain('heights by laser on 2026-04-18, door-sill reads 31 1/4 in {');
});
