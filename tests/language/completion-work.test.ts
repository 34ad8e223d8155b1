// What is offered in a long text is worked out in one go: the work grows as the text does, not with its square.
import { expect, test } from 'vitest';
import { completionsAt } from '../../language/editing/completion/completion.ts';
import { Paving, type Look } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';
import { scanned } from './scanned.ts';

function look(drawn: string): Look & { readonly offset: number } {
  const paving = new Paving(inMemory({}));
  paving.setText('job.paving', drawn.replace('‸', ''));
  return { ...paving.look('job.paving')!, offset: drawn.indexOf('‸') };
}

const times = (count: number, of: (index: number) => string): string =>
  Array.from({ length: count }, (_, at) => of(at)).join('');
const points = (count: number): string => times(count, at => `point p${at} at (${at} ft, 1 ft)\n`);
const areas = (count: number): string =>
  times(count, at => `// note\narea a${at} {\n  outline circle 3 ft across\n  base crushed-stone 6 in\n}\n`);
const corners = (count: number): string => Array.from({ length: count }, (_, at) => `p${at}`).join(' to ');
const inArea = (lines: string): string => `area patio {\n  ${lines}\n}\n`;

const TEXTS: readonly (readonly [what: string, text: (count: number) => string])[] = [
  ['points', count => points(count) + inArea('outline ‸')],
  ['points between corners', count => points(count) + inArea(`outline ${corners(count)} to ‸`)],
  ['corners to round', count => points(count) + inArea(`outline ${corners(count)}, rounded 1 ft at ‸`)],
  ['values', count => `${times(count, at => `let l${at} = ${at + 1} in\n`)}let more = ‸`],
  ['benchmarks', count => `site {\n${times(count, at => `  benchmark b${at}\n`)}}\n${inArea('finish 1 in below ‸')}`],
  ['materials', count => times(count, at => `material m${at} { role base }\n`) + inArea('base ‸')],
  ['areas that a side meets', count => areas(count) + inArea('edges { near meets ‸ }')],
  ['areas that a base is like', count => areas(count) + inArea('base as ‸')],
  ['statements of an area', count => areas(count) + inArea('‸')],
  ['statements of a spec', count => `${areas(count)}‸`],
  ['sides', count => points(count) + inArea(`outline ${corners(count)}\n  edges {\n    ‸\n  }`)],
  [
    'legs',
    count => inArea(`outline walk from (0, 0), ${times(count, () => 'right 1 ft, ')}back\n  edges {\n    leg ‸\n  }`)
  ]
];

test.each(TEXTS)('%s', (_, text) => {
  const counts = [100, 200, 400].map(count => {
    const { text: spec, project, offset } = look(text(count));
    return scanned(() => completionsAt(spec, project, offset));
  });
  const [single, double, fourfold] = counts as [number, number, number];
  expect(single).toBeGreaterThan(100);
  // Names are found by halving, a step more in a list twice as long; the square of the text would make it four times.
  expect(double / single).toBeLessThan(2.5);
  expect(fourfold / double).toBeLessThan(2.5);
});
