import type { Place } from '../findings/finding.ts';
import { isAlike } from './alike.ts';
import type { Compared } from './compared.ts';
import type { NumberChange } from './contract.ts';
import type { Edit } from './edits.ts';
import { type JobNumber, jobNumbers } from './job-numbers.ts';
import { type NewNames, SAME_NAMES } from './new-names.ts';
import { placesOf, placeWithin } from './places.ts';

/** Numbers that are new, gone, or another; `names` tells how the newer text calls things. */
export function numberChanges(
  older: Compared,
  newer: Compared,
  names: NewNames,
  causesOfChange: (change: Pick<NumberChange, 'before' | 'after'>) => readonly Edit[]
): NumberChange[] {
  const numbersOf = ({ evaluation: { numbers } }: Compared, as: NewNames): Map<string, JobNumber> =>
    new Map((numbers === undefined ? [] : jobNumbers(numbers.quantities, as)).map(number => [number.id, number]));
  const [before, after] = [numbersOf(older, names), numbersOf(newer, SAME_NAMES)];
  const ids = [...after.keys(), ...[...before.keys()].filter(id => !after.has(id))];
  return ids.flatMap(id => {
    const [old, now] = [before.get(id), after.get(id)];
    if (old !== undefined && now !== undefined && isSame(old, now)) return [];
    const change = { id, ...(old && { before: old }), ...(now && { after: now }) };
    const places = placesOf(placeOfNumber(older, old), placeOfNumber(newer, now));
    return [{ ...change, causes: causesOfChange(change), places }];
  });
}

function placeOfNumber({ evaluation }: Compared, number: JobNumber | undefined): Place | undefined {
  const thing = number?.thing ?? evaluation.job?.key;
  return number === undefined || thing === undefined ? undefined : placeWithin(evaluation.places, thing);
}

function isSame({ value: one, measure }: JobNumber, { value: other, measure: otherMeasure }: JobNumber): boolean {
  return measure === otherMeasure && isAlike(one, other);
}
