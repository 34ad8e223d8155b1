// Changes that leave less to cut: what is offered, what the text reads then, and that the numbers come to what was promised.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { keepsPromise, offersAt } from '../../language/editing/offers/offers-at.ts';
import type { Offer } from '../../language/editing/offers/offer.ts';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { withCursor } from '../cursor.ts';
import { NodeFiles } from '../../server/node-files.ts';
import { evaluate, FOLDER, SPECS } from '../faulty/specs.ts';
import { newPaving, pathOf, textOf } from '../samples/samples.ts';
import { evaluated, inMemory } from './in-memory.ts';

const yard = (lines: string, more = '', unit = '200 x 100 x 60 mm'): string => `job "Yard" { rules britain }
site { soil sand, benchmark step, ground level with step }
unit block { size ${unit} }
${more}area yard {
${lines}
  traffic foot
  finish  level with step
  base    type-1 150 mm
  edges { all round meets house-wall }
}
`;

function offeredBy(paving: Paving, file: string, start: number, end: number): Offer[] {
  const before = drain(paving.evaluate(file))!;
  const all = drain(offersAt(paving.look(file)!, before, start, end));
  return all.filter(offer => drain(keepsPromise(offer, before, drain(paving.tryOut(file, file, offer.text))!)));
}

/** Each title with the lines that are new. */
async function offered(drawn: string): Promise<string[][]> {
  const { text, start, end } = withCursor(drawn);
  const paving = new Paving(inMemory({ 'job.paving': text }));
  await paving.load('job.paving');
  const lines = text.split('\n');
  return offeredBy(paving, 'job.paving', start, end).map(offer => [
    offer.title,
    ...offer.text.split('\n').filter(line => !lines.includes(line))
  ]);
}

describe('a better start', () => {
  test('joints closed up so that whole units lie between two sides', async () => {
    // 5 courses of 100 mm with joints of 5 are 520 mm; with 3.7 they are 514.8. Along, 5.2 mm are left,
    // more than a joint: unless they are shared out between both ends a strip of 1.5 mm would lie there.
    expect(
      await offered(yard('  outline rectangle 1.02 x 0.515 m\n  paving‸  block in stack-bond, joints 5 mm'))
    ).toEqual([
      [
        'Start 3 mm further along, joints 3.7 mm: no cuts',
        '  paving  block in stack-bond, joints 3.7 mm',
        '  start   shifted (3, 0) mm'
      ]
    ]);
  });

  test('the first unit moved on: a statement of its own, lined up behind the paving', async () => {
    // Above a bay of 50 x 205 mm at its left foot, 1020 mm are five units: begun in the bay, both ends of a course are cut.
    const walk = 'walk from (0, 0), right 1.07 m, up 0.52 m, left 1.02 m, down 0.315 m, left 0.05 m, back';
    const drawn = yard(
      `  outline ${walk}\n  paving‸  block in stack-bond, joints 5 mm from 5 mm to 5 mm\n  bed     sharp-sand 30 mm`
    );
    expect(await offered(drawn)).toEqual([
      ['Start 50 mm further along: 6 fewer cuts, 3 fewer slivers, 0.6 m less sawing', '  start   shifted (50, 0) mm'],
      [
        'Cut two units where a course would end in less than 50 mm: 5 more cuts, 5 fewer slivers, narrowest piece 100 mm instead of 45 mm, 0.5 m more sawing',
        '  inboard-cuts 50 mm'
      ]
    ]);
  });

  test('a shift that is said already gives way, and what else is said stays', async () => {
    const drawn = yard(
      '  outline rectangle 1.02 x 0.52 m\n  paving  block in stack-bond, joints 5 mm from 5 mm to 5 mm\n  start   shifted (30, 20) mm, turned 0 degrees‸'
    );
    expect((await offered(drawn))[0]).toEqual([
      'Start 30 mm less far along, 20 mm less far across: no cuts',
      '  start   turned 0 degrees'
    ]);
  });

  test('whole units along sides are not given up', async () => {
    const lines = (start: string) =>
      yard(
        `  outline rectangle 1.045 x 0.52 m\n  paving  block in stack-bond, joints 5 mm from 5 mm to 5 mm\n  start   ${start}‸`
      );
    expect((await offered(lines('whole units along near and left'))).map(([title]) => title)).toEqual([
      'Cut two units where a course would end in less than 50 mm: 5 more cuts, 5 fewer slivers, narrowest piece 100 mm instead of 20 mm, 0.5 m more sawing'
    ]);
  });

  test('under wheels the courses run as they are', async () => {
    const drawn = yard('  outline rectangle 1.045 x 0.515 m\n  paving‸  block in running-bond, joints 5 mm');
    const turns = async (text: string) => (await offered(text)).filter(([title]) => title!.includes('Turn')).length;
    expect(await turns(drawn)).toBe(1);
    expect(await turns(drawn.replace('traffic foot', 'traffic cars'))).toBe(0);
  });

  test('not at a broken area, nor where nothing is cut', async () => {
    const lines = '  outline rectangle 1.02 x 0.515 m\n  paving‸  block in stack-bond, joints 5 mm';
    expect(await offered(yard(`${lines}\n  finish 3 4 5`))).toEqual([]);
    expect(await offered(yard(lines.replace('0.515', '0.520')))).toEqual([]);
  });
});

describe('two units cut instead of one', () => {
  test('with the cuts and the narrowest piece before and after', async () => {
    const found = await offered(
      yard('  outline rectangle 1.045 x 0.52 m\n  paving‸  block in stack-bond, joints 5 mm from 5 mm to 5 mm')
    );
    expect(found.at(-1)).toEqual([
      'Cut two units where a course would end in less than 50 mm: 5 more cuts, 5 fewer slivers, narrowest piece 100 mm instead of 20 mm, 0.5 m more sawing',
      '  inboard-cuts 50 mm'
    ]);
  });

  test('in other bonds it is told that there are no courses to end', async () => {
    const text = yard('  outline rectangle 1 x 1 m\n  paving  block in herringbone-90\n  inboard-cuts 50 mm');
    const { findings, numbers } = await evaluated(text);
    expect(findings.map(({ id }) => id)).toEqual(['start-does-not-fit']);
    expect(numbers!.quantities.areas).toHaveLength(1);
  });
});

describe('a rectangle', () => {
  test('the nearest sizes without cuts, smaller and larger', async () => {
    const drawn = yard(
      '  outline rectangle ‸1.045 x 0.515 m, corner (2, 1) m\n  paving  block in stack-bond, joints 5 mm'
    );
    expect(await offered(drawn)).toEqual([
      ['Make it 1.02 x 0.52 m: no cuts', '  outline rectangle 1.02 x 0.52 m, corner (2, 1) m'],
      ['Make it 1.225 x 0.52 m: no cuts', '  outline rectangle 1.225 x 0.52 m, corner (2, 1) m']
    ]);
  });

  test('in feet and inches', async () => {
    // Units of 12 x 12 in with joints of 1/8: 6 are 72 5/8 in, 5 are 60 1/2.
    const drawn = yard(
      '  outline rectangle 6 x 5 ft‸\n  paving  block in stack-bond, joints 1/8 in',
      '',
      '12 x 12 x 2 in'
    )
      .replace('britain', 'north-america')
      .replace(/base .*/, 'base crushed-stone 6 in');
    expect((await offered(drawn)).map(([title]) => title)).toEqual([
      'Make it 5 ft 1/2 in x 5 ft 1/2 in: no cuts',
      'Make it 6 ft 5/8 in x 5 ft 1/2 in: no cuts'
    ]);
  });

  test('a size that hangs on names is left alone', async () => {
    const drawn = yard(
      '  outline rectangle ‸long x 0.515 m\n  paving  block in stack-bond, joints 5 mm',
      'let long = 1.045 m\n'
    );
    expect(await offered(drawn)).toEqual([]);
  });
});

describe('the numbers come to what was promised', () => {
  /** Cut units of an area, and millimetres sawn, as its numbers tell them. */
  const cutsOf = ({ numbers }: Evaluation, key: string): number[] => {
    const laying = numbers!.quantities.areas.find(({ id }) => id === key)?.laying ?? [];
    const sawn = laying.reduce((sum, { sawLength }) => sum + (sawLength ?? 0), 0);
    return [laying.reduce((sum, { cut }) => sum + cut, 0), Math.round(sawn * 1000)];
  };

  /** At every statement of a text where something may be offered: how many were, and those that were not kept. */
  async function kept(paving: Paving, file: string, text: string, changed: (text: string) => Promise<Evaluation>) {
    const before = drain(paving.evaluate(file))!;
    let count = 0;
    for (const { index } of text.matchAll(/^ *(?:start|paving|outline) /gm)) {
      const at = index + /^ */.exec(text.slice(index))![0].length;
      for (const offer of drain(offersAt(paving.look(file)!, before, at, at))) {
        if (!drain(keepsPromise(offer, before, drain(paving.tryOut(file, file, offer.text))!))) continue;
        const after = await changed(offer.text);
        const promised = [offer.promise.cutUnits, Math.round(offer.promise.sawLength * 1000)];
        expect([offer.title, ...cutsOf(after, offer.area)]).toEqual([offer.title, ...promised]);
        count++;
      }
    }
    return count;
  }

  test('on samples, before a start was chosen for them', async () => {
    let count = 0;
    for (const name of ['drive.paving', 'first-job.paving', 'path.paving', 'sunny-court.paving', 'terrace.paving']) {
      const text = textOf(name).replaceAll(/^ *(?:start|inboard-cuts) .*\n/gm, '');
      const paving = newPaving();
      paving.setText(pathOf(name), text);
      await paving.load(pathOf(name));
      const again = newPaving();
      count += await kept(paving, pathOf(name), text, async changed => {
        again.setText(pathOf(name), changed);
        await again.load(pathOf(name));
        return drain(again.evaluate(pathOf(name)))!;
      });
    }
    expect(count).toBeGreaterThan(5);
  }, 300_000);

  test('on faulty specs, as far as their areas are sound', async () => {
    let count = 0;
    // One in twelve: each is laid many times over.
    for (const { file } of SPECS.filter((_, index) => index % 12 === 0)) {
      const paving = new Paving(new NodeFiles({ root: FOLDER, shownFrom: FOLDER }));
      await paving.load(file);
      const changed = (text: string): Promise<Evaluation> => evaluate(file, new Map([[file, text]]));
      count += await kept(paving, file, readFileSync(file, 'utf8'), changed);
    }
    expect(count).toBeGreaterThan(5);
  }, 300_000);
});
