import { expect, it } from 'vitest';
import { printAs, printLength } from '../../language/measures/print.ts';
import { given, INCH, job, LEVEL, numbersOf, only } from './jobs.ts';
import { rulesOf } from '../shipped-rules.ts';
import { terrace } from './terrace.ts';

// A job worked out by hand and by script, beside its spec.
it('has the numbers worked by hand', () => {
  const numbers = only(terrace(), { system: 'imperial' });
  const [bed, base] = numbers.layers;
  expect(printAs('area', numbers.grossArea, 'imperial')).toBe('235.67 sq ft');
  expect(printAs('area', numbers.netArea, 'imperial')).toBe('233.73 sq ft');
  expect(printAs('area', base!.area, 'imperial')).toBe('249.63 sq ft');
  expect(printAs('stone-volume', base!.compactedVolume, 'imperial')).toBe('4.62 cu yd');
  expect(printAs('mass', base!.mass!, 'imperial')).toBe('8.74 short tons');
  expect(printAs('stone-volume', base!.looseVolume!, 'imperial')).toBe('5.78 cu yd');
  expect(printAs('sand-volume', bed!.compactedVolume, 'imperial')).toBe('19.48 cu ft');
  expect(printLength(numbers.edging[0]!.length, 'imperial')).toBe('31 ft 3 11/16 in');
});

it('is clean by the North American rules, but for what its start leaves at the edge', () => {
  // Where it snows, 2 in below the sill.
  const below = { ...LEVEL, above: given(-2 * INCH) };
  const low = terrace({ finish: below, site: { ...terrace().site, ground: below } });
  const { findings } = numbersOf(job([low], { system: 'imperial', rules: rulesOf(['north-america']) }));
  expect(findings.map(({ id, severity }) => [id, severity])).toEqual([['slivers', 'note']]);
});
