import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { drain, Paving } from '../../language/paving.ts';
import type { SpecFiles } from '../../language/project.ts';
import { NodeFiles } from '../../server/node-files.ts';
import { again, areaNumbers, evaluated, JOBS, newPaving, pathOf, textOf } from './samples.ts';

type Counts = Readonly<Record<string, number>>;

/** How often each stage was computed since `before`; stages without work are left out. */
function since(before: Counts, after: Counts): Counts {
  const more = Object.entries(after).map(([stage, count]): [string, number] => [stage, count - before[stage]!]);
  return Object.fromEntries(more.filter(([, count]) => count !== 0));
}

describe('what does not change the meaning recomputes nothing', () => {
  const CHANGES: readonly (readonly [string, (text: string) => string])[] = [
    ['a comment on top', text => `// Seen by the neighbour.\n${text}`],
    ['a comment in each line', text => text.replaceAll(/$/gm, ' // checked')],
    ['a blank line before each line', text => text.replaceAll(/^/gm, '\n')],
    ['more room between words', text => text.replaceAll(/^ {2}(\w\S*) /gm, '    $1     ')],
    ['statements of the areas the other way round', statementsTurned],
    ['points and values last, the other way round', linesLast]
  ];

  it.each(JOBS.flatMap(job => CHANGES.map(([what, change]) => ({ job, what, change }))))(
    '$job: $what',
    async ({ job, change }) => {
      const paving = newPaving();
      const before = await evaluated(job, paving);
      const counts = paving.session.computations;
      expect(counts.layers).toBe(before.numbers!.quantities.areas.length);
      const changed = change(textOf(job));
      expect(changed).not.toBe(textOf(job));
      paving.setText(pathOf(job), changed);
      const after = again(paving, job);
      expect(since(counts, paving.session.computations)).toEqual({});
      expect(areaNumbers(after)).toEqual(areaNumbers(before));
    }
  );
});

/** Points, values and existing things of one line behind all else. */
function linesLast(text: string): string {
  const single = /^(?:let|point|existing|unit|material|site|job) [^{\n]*(?:\{.*\})?\n/gm;
  const lines = text.match(single) ?? [];
  return `${text.replaceAll(single, '')}\n${lines.reverse().join('')}// The end.\n`;
}

/** The lines of each block of an area, but for its edges, in the opposite order; borders lie one inside the other as told. */
function statementsTurned(text: string): string {
  return text.replaceAll(
    /^(area \S+ \{\n)((?: {2}[a-z].*\n)+?)( {2}edges \{)/gm,
    (_, head: string, lines: string, edges: string) => {
      const told = lines.split('\n').slice(0, -1);
      const borders = told.filter(line => line.startsWith('  border '));
      const turned = told.reverse().map(line => (line.startsWith('  border ') ? borders.shift()! : line));
      return head + turned.join('\n') + '\n' + edges;
    }
  );
}

describe('an edit recomputes what depends on it and no more', () => {
  async function edited(job: string, ...edits: readonly (readonly [string, string])[]): Promise<Counts> {
    const paving = newPaving();
    await evaluated(job, paving);
    const before = paving.session.computations;
    let text = textOf(job);
    for (const [from, to] of edits) {
      // However many spaces the formatter puts between the words.
      const words = new RegExp(from.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(/ +/g, ' +'), 'g');
      expect(text.match(words)?.length, from).toBe(1);
      text = text.replace(words, to);
    }
    paving.setText(pathOf(job), text);
    const after = again(paving, job);
    expect(after.numbers!.quantities.missing).toEqual([]);
    return since(before, paving.session.computations);
  }

  it('an area moved behind the others: nothing', async () => {
    const paving = newPaving();
    await evaluated('courtyard.paving', paving);
    const before = paving.session.computations;
    const text = textOf('courtyard.paving');
    const [area] = /^area bay \{\n(?: .*\n)+\}\n/m.exec(text)!;
    paving.setText(pathOf('courtyard.paving'), `${text.replace(area, '')}\n${area}`);
    again(paving, 'courtyard.paving');
    expect(since(before, paving.session.computations)).toEqual({});
  });

  it('a bed as thick as it was, otherwise written: nothing', async () => {
    const counts = await edited('drive.paving', ['let turn-from = 3.60 m', 'let turn-from = 360 cm']);
    expect(counts).toEqual({});
  });

  it('the base of one area of three: its layers, its rules, the pairs it is in and the job', async () => {
    const counts = await edited('square/square.paving', ['base crushed-rock 150 mm', 'base crushed-rock 175 mm']);
    expect(counts).toMatchObject({ layers: 1, rules: 1, job: 1 });
    expect(counts.outline).toBeUndefined();
    expect(counts.laying).toBeUndefined();
  });

  it('the base that two others say `as`: the layers of all three', async () => {
    const counts = await edited('courtyard.paving', ['base quarry-stone 150 mm', 'base quarry-stone 160 mm']);
    expect(counts).toMatchObject({ layers: 3, rules: 3, job: 1 });
    expect(counts.outline).toBeUndefined();
    expect(counts.laying).toBeUndefined();
  });

  it('a joint of one area: its units and layers, no outline', async () => {
    const counts = await edited('square/square.paving', ['running-bond, joints 4 mm', 'running-bond, joints 5 mm']);
    expect(counts).toMatchObject({ laying: 1, layers: 1, rules: 1 });
    expect(counts.outline).toBeUndefined();
  });

  it('a box moved: the outline, units and layers of its area', async () => {
    const counts = await edited('square/square.paving', ['centre (18, 9.50) m', 'centre (18, 9.25) m']);
    expect(counts).toMatchObject({ outline: 1, laying: 1, layers: 1 });
  });

  it('a corner that two areas share: both, and not the third', async () => {
    const counts = await edited('courtyard.paving', ['let bay-start = 2.10 m', 'let bay-start = 2.20 m']);
    expect(counts).toMatchObject({ outline: 2, laying: 2, layers: 2 });
  });

  it('the title: nothing', async () => {
    expect(await edited('drive.paving', ['Hill lane drive', 'Drive in the hill lane'])).toEqual({});
  });
});

describe('jobs in one folder', () => {
  const small = (title: string, size: string): string => `job "${title}" { rules britain }

site { soil clay, bearing 5 %, benchmark door-step, ground level with door-step }

unit block { size 200 x 100 x 60 mm }
let thick = ${size === '3 x 4 m' ? '150 mm' : '200 mm'}

area patio {
  outline rectangle ${size}
  traffic foot
  finish  level with door-step
  paving  block in running-bond, joints 3 mm
  bed     sharp-sand 30 mm
  base    type-1 thick
  edges   { all round meets garden-wall }
}
`;

  it('do not meet, though their names are the same', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'paving-'));
    try {
      const jobs = { 'one.paving': small('One', '3 x 4 m'), 'two.paving': small('Two', '5 x 6 m') };
      for (const [name, text] of Object.entries(jobs)) await writeFile(path.join(folder, name), text);
      const together = new Paving(new NodeFiles({ root: folder, shownFrom: folder }));
      const work = async (paving: Paving, name: string): Promise<unknown> => {
        await paving.load(path.join(folder, name));
        const { findings, numbers } = drain(paving.evaluate(path.join(folder, name)))!;
        return JSON.stringify({ findings, numbers });
      };
      for (const name of ['one.paving', 'two.paving', 'one.paving']) {
        const alone = new Paving(new NodeFiles({ root: folder, shownFrom: folder }));
        expect(await work(together, name)).toBe(await work(alone, name));
      }
      // Each stands in the memory for itself: turning from one to the other computes nothing anew.
      const counts = together.session.computations;
      await work(together, 'two.paving');
      await work(together, 'one.paving');
      expect(together.session.computations).toEqual(counts);
      expect(counts.layers).toBe(2);
    } finally {
      await rm(folder, { recursive: true });
    }
  });

  it('every sample is the same alone as after all others', async () => {
    const together = newPaving();
    for (const job of [...JOBS, ...[...JOBS].reverse()]) {
      const { findings, numbers } = await evaluated(job, together);
      const alone = await evaluated(job);
      expect(JSON.stringify({ findings, numbers })).toBe(
        JSON.stringify({ findings: alone.findings, numbers: alone.numbers })
      );
    }
  });
});

describe('names', () => {
  /** A row of plots, each with points, a unit, a material, a value and an area of its own. */
  function spec(plots: number): string {
    const plot = (index: number): string => `
let wide-${index} = 4.01 m + ${index / 2} mm
point A-${index} at (${index * 10}, 0) m
point B-${index} at (${index * 10} m + wide-${index}, 0)
point C-${index} at (${index * 10} m + wide-${index}, 3 m)
unit block-${index} { size 200 x 100 x 60 mm }
material stone-${index} { role base, compacted 2.1 t/m3, loose 1.7 t/m3 }
area plot-${index} {
  outline A-${index} to B-${index} to C-${index}
  traffic foot
  finish  level with step
  paving  block-${index} in running-bond, joints 3 mm
  base    stone-${index} 150 mm
  edges { the rest meets garden-wall }
}
`;
    const head =
      'job "Plots" { rules britain }\nsite { soil clay, bearing 5 %, benchmark step, ground level with step }\n';
    return head + Array.from({ length: plots }, (_, index) => plot(index + 1)).join('');
  }

  async function lookUps(text: string): Promise<number> {
    const files: SpecFiles = { resolve: () => undefined, read: () => Promise.resolve({ text }), show: file => file };
    const paving = new Paving(files);
    await paving.load('plots.paving');
    const { findings, lookUps: count, numbers } = drain(paving.evaluate('plots.paving'))!;
    expect(findings).toEqual([]);
    expect(numbers!.quantities.complete).toBe(true);
    return count;
  }

  it('are looked up at most 2.1 times as often when the text doubles', async () => {
    const [single, double, fourfold] = [await lookUps(spec(20)), await lookUps(spec(40)), await lookUps(spec(80))];
    expect(single).toBeGreaterThan(20 * 5);
    expect(double / single).toBeLessThanOrEqual(2.1);
    expect(fourfold / double).toBeLessThanOrEqual(2.1);
  });
});
