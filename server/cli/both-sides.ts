import type { ReadResult, SpecFiles } from '../../language/project.ts';

/** The older text of each job, or the newer. */
export const SIDES = ['before', 'after'] as const;
export type Side = (typeof SIDES)[number];

/**
 * The files of both sides of a comparison as one, so that one language reads them: a file is known by its side and by what
 * it is known by there.
 */
export class BothSides implements SpecFiles {
  readonly #sides: Readonly<Record<Side, SpecFiles>>;

  constructor(sides: Readonly<Record<Side, SpecFiles>>) {
    this.#sides = sides;
  }

  resolve(from: string, written: string): string | undefined {
    const { side, file } = parted(from);
    const found = this.#sides[side].resolve(file, written);
    return found === undefined ? undefined : fileOf(side, found);
  }

  read(file: string): Promise<ReadResult> {
    const { side, file: own } = parted(file);
    return this.#sides[side].read(own);
  }

  show(file: string): string {
    const { side, file: own } = parted(file);
    return this.#sides[side].show(own);
  }
}

/** What a file of a side is known by. */
export function fileOf(side: Side, file: string): string {
  return `${side}:${file}`;
}

function parted(known: string): { readonly side: Side; readonly file: string } {
  const colon = known.indexOf(':');
  return { side: known.slice(0, colon) as Side, file: known.slice(colon + 1) };
}
