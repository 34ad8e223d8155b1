// Breathing protection for sawing: 29 CFR 1926.1153 table 1, read in a state's text of it.
import { describe, expect, test } from 'vitest';
import { protectionFor, type Sawing } from '../../language/schedule/dust.ts';
import { dustCaution } from '../../language/schedule/dust-caution.ts';

const sawing = (saw: Sawing['saw'], hours: number, where: Sawing['where'] = 'outdoors'): Sawing => ({
  saw,
  hours,
  where
});
const factors = (...shift: Sawing[]): number[] => protectionFor(shift).map(({ factor }) => factor);

describe('protection by tool and hours of a shift', () => {
  test('O-66: handheld saw, wet, outdoors: none asked for at 3 h, a factor of 10 at 5 h; at 4 h the first column counts', () => {
    expect(factors(sawing('handheld', 3))).toEqual([0]);
    expect(factors(sawing('handheld', 4))).toEqual([0]);
    expect(factors(sawing('handheld', 5))).toEqual([10]);
  });

  test('handheld saw indoors: a factor of 10 in both columns', () => {
    expect(factors(sawing('handheld', 1, 'indoors'))).toEqual([10]);
    expect(factors(sawing('handheld', 5, 'indoors'))).toEqual([10]);
  });

  test('O-67: stationary masonry saw, wet: none asked for at 3 h nor at 6 h', () => {
    expect(factors(sawing('stationary', 3))).toEqual([0]);
    expect(factors(sawing('stationary', 6))).toEqual([0]);
  });

  test('O-68: 2.5 h handheld and 2.0 h walk-behind in one shift are over 4 h: the second column counts for each', () => {
    const shift = [sawing('handheld', 2.5), sawing('walk-behind', 2)];
    expect(protectionFor(shift)).toEqual([
      { column: 'over 4 h', factor: 10 },
      { column: 'over 4 h', factor: 0 }
    ]);
    expect(factors(sawing('handheld', 2.5))).toEqual([0]);
  });
});

describe('what is told of it', () => {
  test('where the table asks for none: only while the water feed works, and wear one anyway', () => {
    const { text, source } = dustCaution(3, 8, false);
    expect(text).toContain('up to 4 h a shift the table asks for none while the water feed works (wear one anyway)');
    expect(text).toContain('over 4 h, all sawing of the shift together, for a protection factor of 10');
    expect(source).toContain('29 CFR 1926.1153');
  });

  test('over 4 h in a shift; no shift is longer than the crew works', () => {
    expect(dustCaution(20, 8, false).text).toContain(
      'at 8.0 h in one shift the table asks for a protection factor of 10'
    );
    expect(dustCaution(20, 4, false).text).toContain('up to 4 h a shift');
  });

  test('in Britain a factor of 20 besides water', () => {
    expect(dustCaution(3, 8, true)).toMatchObject({
      text: expect.stringContaining('In Britain: a factor of 20') as string,
      source: expect.stringContaining('HSE on cutting paving blocks, kerbs and flags') as string
    });
  });
});
