// Figures above areas while their text is broken, and the short values behind statements.
import { describe, expect, it, test } from 'vitest';
import { letHints } from '../../language/editing/let-hints.ts';
import { drain, Paving, type Evaluation, type Look } from '../../language/paving.ts';
import type { Span } from '../../language/syntax/text-edit.ts';
import { hintsIn } from '../../language/views/hints.ts';
import { numbersAt } from '../../language/views/hover.ts';
import { lensesIn } from '../../language/views/lenses.ts';
import { again, evaluated, JOBS, newPaving, pathOf, textOf } from '../samples/samples.ts';
import { inMemory } from './in-memory.ts';
import { scanned } from './scanned.ts';

const EVERYWHERE: Span = { start: 0, end: Infinity };

const FILE = 'first-job.paving';

/** The first sample, then the same with one thing typed otherwise. */
async function typedOver(before: string, after: string): Promise<Evaluation> {
  const paving = newPaving();
  await evaluated(FILE, paving);
  expect(textOf(FILE)).toContain(before);
  paving.setText(pathOf(FILE), textOf(FILE).replace(before, after));
  return again(paving, FILE);
}

const lineOf = (words: string): number => textOf(FILE).slice(0, textOf(FILE).indexOf(words)).split('\n').length;
const lenses = (evaluation: Evaluation): string[] => lensesIn(evaluation, FILE).map(({ text }) => text);

// 12 x 16 ft is 192 sq ft; units and dig as the README works them out.
const GOOD = '192.00 sq ft · 102 whole, 12 cut · dig 8 1/2 in deep';

describe('an area whose text is broken keeps its last good figures, marked with the line that broke it', () => {
  it.each([
    ['its own text', 'rectangle 12 x 16 ft', 'rectangle 12 x'],
    ['its own name of a thing', 'crushed-stone 6 in', 'crushed-stne 6 in'],
    ['its unit', '15 7/8 x 15 7/8 x 2 in', '15 7/8 x x 2 in'],
    ['the site', 'soil      common-earth', 'soil      '],
    ['its shape', 'rectangle 12 x 16 ft', 'rectangle 12 x 0 ft']
  ])('%s', async (_, before, after) => {
    const evaluation = await typedOver(before, after);
    const line = lineOf(before.split(/ {2,}| x/)[0]!);
    expect(lenses(evaluation)).toEqual([
      'no numbers while there are errors',
      `before the error in line ${line}: ${GOOD}`
    ]);
  });

  it('but they are no part of the job: without them every number and finding is the same', async () => {
    const broken = await typedOver('rectangle 12 x 16 ft', 'rectangle 12 x');
    const fresh = new Paving(inMemory({ [FILE]: textOf(FILE).replace('rectangle 12 x 16 ft', 'rectangle 12 x') }));
    await fresh.load(FILE);
    const never = drain(fresh.evaluate(FILE))!;
    expect(broken.numbers!.lastGood).toHaveLength(1);
    expect(never.numbers!.lastGood).toEqual([]);
    const { lastGood: _shown, ...numbers } = broken.numbers!;
    const { lastGood: _none, ...others } = never.numbers!;
    expect(numbers).toEqual(others);
    expect(broken.findings).toEqual(never.findings);
    expect(lenses(never)).toEqual([
      'no numbers while there are errors',
      `no numbers: see the error in line ${lineOf('rectangle')}`
    ]);
  });

  it('and pointing at its name tells them, marked the same', async () => {
    const broken = await typedOver('rectangle 12 x 16 ft', 'rectangle 12 x');
    const { line, column } = broken.places.get('area:patio')!;
    const { markdown } = numbersAt(broken, FILE, line, column)!;
    expect(markdown).toContain(`**patio**, before the error in line ${lineOf('rectangle')}\n`);
    // 192 sq ft are 17.84 m2.
    expect(markdown).toMatch(/\| Net area \| 192\.00 sq ft \| &emsp;17\.84 m2 \|/);
    expect(markdown).not.toContain('_');
  });

  it('an area that was taken out and written again begins anew', async () => {
    const paving = newPaving();
    await evaluated(FILE, paving);
    const [area] = /^area patio \{\n(?: .*\n)+\}\n/m.exec(textOf(FILE))!;
    paving.setText(pathOf(FILE), textOf(FILE).replace(area, ''));
    again(paving, FILE);
    paving.setText(pathOf(FILE), textOf(FILE).replace('12 x 16 ft', '12 x'));
    expect(again(paving, FILE).numbers!.lastGood).toEqual([]);
  });
});

test('pointing at an area tells its dig, and at several sides in one line each of them and all together', async () => {
  const text = textOf(FILE).replace(
    / +left .*\n.*right .*\n.*far .*\n/,
    '    the rest meets lawn, edging spiked-strip\n'
  );
  const paving = new Paving(inMemory({ [FILE]: text }));
  await paving.load(FILE);
  const evaluation = drain(paving.evaluate(FILE))!;
  const at = (words: string): string => {
    const lines = text.slice(0, text.indexOf(words)).split('\n');
    return numbersAt(evaluation, FILE, lines.length, lines.at(-1)!.length + 1)!.markdown;
  };
  for (const words of ['patio {', 'finish ']) {
    // 3 in of ground below the sill, less 2 1/2 in of finish, and 2 + 1 + 6 in of layers.
    expect(at(words)).toContain('| Deepest dig | 8 1/2 in | &emsp;215.9 mm |');
    expect(at(words)).toContain('Deepest dig: _ground height - finish height');
  }
  expect(
    at('the rest')
      .split('\n')
      .filter(line => line !== '')
  ).toEqual([
    '**3 sides of patio, meeting lawn**',
    '| | | |',
    '|:--|--:|--:|',
    '| right | 16 ft | &emsp;4.877 m |',
    '| far | 12 ft | &emsp;3.658 m |',
    '| left | 16 ft | &emsp;4.877 m |',
    '| Together | 44 ft | &emsp;13.411 m |'
  ]);
});

test('a named quantity tells what it comes to: where it is declared as a sum, and where it is used', async () => {
  const paving = newPaving();
  const { job } = await evaluated('terrace.paving', paving);
  const lines = textOf('terrace.paving').split('\n');
  const shown = letHints(paving.look(pathOf('terrace.paving'))!, job!.system, EVERYWHERE).map(({ place, text }) => {
    const line = lines[place.endLine - 1]!;
    return `${line
      .slice(0, place.endColumn - 1)
      .trim()
      .replaceAll(/ +/g, ' ')} ‹${text}›`;
  });
  expect(shown).toEqual(['let base-depth = frost-base + for-clay ‹= 8 in›', 'base crushed-stone base-depth ‹= 8 in›']);
  const broken = textOf('terrace.paving').replace('base-depth past the edging', 'base-depth past the');
  paving.setText(pathOf('terrace.paving'), broken);
  expect(letHints(paving.look(pathOf('terrace.paving'))!, job!.system, EVERYWHERE)).toHaveLength(1);
});

describe('Named quantities in a long text', () => {
  const long = async (areas: number): Promise<Look> => {
    const lines = Array.from({ length: areas }, (_, at) => [
      `let depth-${at} = 4 in + ${at} in`,
      `area a${at} {`,
      `  base crushed-stone depth-${at}`,
      '}'
    ]);
    const paving = new Paving(inMemory({ [FILE]: `job "Long" { rules america }\n${lines.flat().join('\n')}\n` }));
    await paving.load(FILE);
    return paving.look(FILE)!;
  };

  it('are told in the lines asked for alone, as for the whole text', async () => {
    const look = await long(20);
    const all = letHints(look, 'imperial', EVERYWHERE);
    expect(all).toHaveLength(40);
    const { text } = look.text.parsed;
    const within = { start: text.indexOf('let depth-7'), end: text.indexOf('let depth-9') - 1 };
    expect(letHints(look, 'imperial', within)).toEqual(all.slice(14, 18));
  });

  it('make work as the text grows, not as its square; and in a few lines next to none', async () => {
    const [short, twice] = [await long(300), await long(600)];
    const few = { start: 40, end: 400 };
    const work = (look: Look, within: Span): number => scanned(() => letHints(look, 'imperial', within));
    expect(work(twice, EVERYWHERE) / work(short, EVERYWHERE)).toBeLessThan(2.2);
    expect(work(twice, few) / work(twice, EVERYWHERE)).toBeLessThan(0.2);
  });
});

/** Each line with its value, at the place where it is shown. */
function withValues(evaluation: Evaluation, text: string): string[] {
  const lines = text.split('\n');
  return hintsIn(evaluation, evaluation.texts[0]!.file).map(({ place, text: value }) => {
    const line = lines[place.endLine - 1]!;
    return `${line
      .slice(0, place.endColumn - 1)
      .trim()
      .replaceAll(/ +/g, ' ')} ‹${value}›`;
  });
}

test('behind the statements of an area stands what they come to', async () => {
  // 102 + 12 pieces, 192 sq ft of 6 in out past the edging weigh 7.51 short tons: as the README works them out.
  expect(withValues(await evaluated(FILE), textOf(FILE))).toEqual([
    'bed washed-sand 1 in ‹1760 lb›',
    'base crushed-stone 6 in ‹7.51 short tons›',
    'paving slab-16 in running-bond, joints 1/8 in ‹102 whole, 12 cut›',
    'joints filled with joint-sand ‹47 lb›',
    'near meets house-wall ‹12 ft›',
    'right meets lawn, edging spiked-strip ‹16 ft›',
    'far meets lawn, edging spiked-strip ‹12 ft›',
    'left meets planting, edging spiked-strip ‹16 ft›'
  ]);
});

test('no value is longer than 20 characters, and none stands in a broken area', async () => {
  let shown = 0;
  for (const job of JOBS) {
    const paving = newPaving();
    const evaluation = await evaluated(job, paving);
    const hints = hintsIn(evaluation, job);
    shown += hints.length;
    for (const { text } of hints) expect(text.length, text).toBeLessThanOrEqual(20);
    const [name] = /^area (\S+)/m.exec(textOf(job))!.slice(1);
    paving.setText(pathOf(job), textOf(job).replace(`area ${name} {`, `area ${name} {\n  traffic`));
    const broken = again(paving, job);
    const place = broken.places.get(`area:${name}`)!;
    const end = textOf(job).split('\n').indexOf('}', place.line) + 2;
    const inside = hintsIn(broken, job).filter(({ place: { line } }) => line >= place.line && line <= end);
    expect(inside, job).toEqual([]);
  }
  expect(shown).toBeGreaterThan(60);
});
