// What a drawn bond is, whatever its name.
import { expect, test } from 'vitest';
import { type BondLook, lookOfCell } from '../../language/laying/bonds/bond-look.ts';
import { slotsIn } from '../../language/lowering/bond-cell.ts';

test.each<[BondLook, string]>([
  ['herringbone', 'hfgh efcc ebbd aagd'],
  ['basket-weave', 'ffgh eegh abdd abcc'],
  // One unit across the ends of two: a joint still runs through between the pairs.
  ['basket-weave', 'cc ab ab'],
  ['running', 'dccd aabb'],
  ['stack', 'ccdd aabb'],
  ['several-sizes', 'feeg feed aacd aabb'],
  ['several-sizes', 'jddee cddic chbbc aabbg aafee']
])('%s: %s', (look, drawn) => {
  const courses = drawn.split(' ').map(course => [...course]);
  const cell = slotsIn(courses.toReversed());
  if (!('slots' in cell)) throw new Error(`${drawn} makes no bond`);
  expect(lookOfCell({ columns: courses[0]!.length, rows: courses.length, slots: cell.slots })).toBe(look);
});
