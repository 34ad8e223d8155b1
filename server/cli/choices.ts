import { Failure } from './fail.ts';

/** Reads an option that is one word out of a few. */
export function oneOf<T extends string>(option: string, known: readonly T[]): (written: string) => T {
  return written => {
    const found = known.find(word => word === written);
    if (found === undefined)
      throw new Failure(`${option} can't be ${written}. Write ${known.slice(0, -1).join(', ')} or ${known.at(-1)!}.`);
    return found;
  };
}
