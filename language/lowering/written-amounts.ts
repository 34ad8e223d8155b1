/** A quantity where it is written: the offset just past it, its SI value and measure. */
export interface WrittenAmount {
  readonly end: number;
  readonly value: number;
  readonly measure: string;
}

/** By file, then by the offset at which a quantity begins. */
export type WrittenAmounts = ReadonlyMap<string, ReadonlyMap<number, WrittenAmount>>;
