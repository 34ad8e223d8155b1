import { type Owner, type Quantity, quantitiesOf } from '../../quantities/catalogue.ts';
import type { Concern } from '../../job/rule.ts';
import type { Member, ThingOf } from './member.ts';

/** Every number of an owner that is worked out, under its name in the catalogue. */
export function fromCatalogue<T extends Concern>(
  of: T,
  owner: Owner,
  numbersOf: (thing: ThingOf<T>) => object | undefined,
  more: Partial<Member<T>> = {}
): Member<T>[] {
  return quantitiesOf(owner)
    .filter(({ computed, workOnly }) => computed && workOnly === undefined)
    .map((quantity: Quantity) => ({
      name: quantity.id,
      of,
      measure: quantity.measure,
      print: quantity.print,
      describe: quantity.describe,
      read: thing => (numbersOf(thing) as Readonly<Record<string, number>> | undefined)?.[quantity.key],
      ...more
    }));
}

/** Every number of an owner, given or worked out, under its name in the catalogue without the owner's. */
export function ownNumbers<T extends Concern>(
  of: T,
  owner: Owner,
  numbersOf: (thing: ThingOf<T>) => object | undefined,
  more: Partial<Member<T>> = {},
  names: Readonly<Record<string, string>> = {}
): Member<T>[] {
  return quantitiesOf(owner).map((quantity: Quantity) => ({
    name: names[quantity.id] ?? quantity.id.replace(`${owner}-`, ''),
    of,
    measure: quantity.measure,
    print: quantity.print,
    describe: quantity.describe,
    read: thing => (numbersOf(thing) as Readonly<Record<string, number>> | undefined)?.[quantity.key],
    ...more
  }));
}
