import { describe, expect, it } from 'vitest';
import type { Evaluation } from '../../language/paving.ts';
import { badlyTold } from '../faulty/plain-words.ts';
import { linesOfAreas } from './dependence.ts';
import { again, areaNumbers, evaluated, JOBS, newPaving, pathOf, textOf } from './samples.ts';

/*
 * Each line of each sample is cut short after each of its words, the rest as it stands. Only an area that lies there, or
 * whose numbers are taken from there, may change; that is worked out from the names in the samples (dependence.ts).
 */
interface Cut {
  readonly file: string;
  /** From 0. */
  readonly line: number;
  readonly text: string;
  readonly left: string;
  readonly inComment: boolean;
}

function* cutsOf(file: string): Generator<Cut> {
  const lines = textOf(file).split('\n');
  for (const [line, whole] of lines.entries()) {
    const comment = /^(?:[^"/]|"[^"]*"|\/(?!\/))*/.exec(whole)![0].trimEnd().length;
    for (const word of whole.matchAll(/\S+/g)) {
      const left = whole.slice(0, word.index + word[0].length);
      if (left === whole.trimEnd()) continue;
      yield {
        file,
        line,
        left,
        inComment: left.length >= comment,
        text: [...lines.slice(0, line), left, ...lines.slice(line + 1)].join('\n')
      };
    }
  }
}

const counted = { cases: 0, unaffected: 0, changed: 0 };

describe.each(JOBS)('%s, half typed', job => {
  it('only what leans on the cut changes', { timeout: 300_000 }, async () => {
    const paving = newPaving();
    const whole = await evaluated(job, paving);
    const before = areaNumbers(whole);
    const texts = new Map(whole.texts.map(({ file, text }) => [file, text]));
    const lines = linesOfAreas(job, texts);
    expect([...lines.keys()].sort()).toEqual([...before.keys()].sort());
    const wrong: string[] = [];
    for (const file of texts.keys()) {
      for (const cut of cutsOf(file)) {
        counted.cases++;
        const where = `${file}:${cut.line + 1} "${cut.left.trim()}"`;
        paving.setText(pathOf(file), cut.text);
        const after = evaluatedOrThrown(() => again(paving, job));
        if (typeof after === 'string') {
          wrong.push(`${where} throws ${after}`);
          continue;
        }
        wrong.push(...badlyTold(after).map(told => `${where}: ${told}`));
        const now = areaNumbers(after);
        for (const [area, numbers] of before) {
          const same = now.get(area) === numbers;
          if (!same) counted.changed++;
          if (lines.get(area)!.has(`${file}:${cut.line}`) && !cut.inComment) continue;
          counted.unaffected++;
          if (!same) wrong.push(`${where} ${now.has(area) ? 'changes' : 'loses'} ${area}`);
        }
      }
      paving.setText(pathOf(file), texts.get(file)!);
    }
    expect(areaNumbers(again(paving, job))).toEqual(before);
    expect(wrong).toEqual([]);
  });
});

function evaluatedOrThrown(evaluate: () => Evaluation): Evaluation | string {
  try {
    return evaluate();
  } catch (error) {
    return String(error);
  }
}

it('there are many cases', () => {
  console.log(
    `Half-typed: ${counted.cases} cuts, ${counted.unaffected} areas among them that may not change, ${counted.changed} areas changed.`
  );
  expect(counted.cases).toBeGreaterThan(2000);
  expect(counted.unaffected).toBeGreaterThan(4000);
  // Cuts do break what they lie in.
  expect(counted.changed).toBeGreaterThan(500);
});
