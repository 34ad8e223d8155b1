/** Places and weights of the five-point Gauss rule on -1 to 1: exact up to the ninth power. */
const FIVE_POINTS: readonly (readonly [number, number])[] = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900]
];

/** Share of the largest of the integrals by which a stretch and its two halves may differ: what rounding leaves sure. */
const PRECISION = 1e-13;

/** How often a stretch may be halved: where a function bends sharply, 1/4096 of the stretch is left as it is. */
const MOST_HALVINGS = 12;

/** Integrals from 0 to 1 of several functions at once, smooth between the stops. */
export function integral(of: (share: number) => readonly number[], stops: readonly number[]): readonly number[] {
  const ends = [0, ...[...stops].sort((a, b) => a - b), 1];
  const totals: number[] = [];
  const stretches = ends.slice(1).flatMap((end, index) => {
    const start = ends[index]!;
    return end > start ? [{ start, end, whole: onStretch(of, start, end) }] : [];
  });
  const slack = PRECISION * Math.max(...stretches.flatMap(({ whole }) => whole.map(({ size }) => size)));
  for (const { start, end, whole } of stretches) refine(of, start, end, whole, slack, MOST_HALVINGS, totals);
  return totals;
}

function refine(
  of: (share: number) => readonly number[],
  start: number,
  end: number,
  whole: readonly Sum[],
  slack: number,
  halvings: number,
  totals: number[]
): void {
  const middle = (start + end) / 2;
  const first = onStretch(of, start, middle);
  const second = onStretch(of, middle, end);
  const agrees = whole.every(({ sum }, place) => Math.abs(first[place]!.sum + second[place]!.sum - sum) <= slack);
  if (agrees || halvings === 0) {
    for (const [place, { sum }] of first.entries()) totals[place] = (totals[place] ?? 0) + sum + second[place]!.sum;
    return;
  }
  refine(of, start, middle, first, slack, halvings - 1, totals);
  refine(of, middle, end, second, slack, halvings - 1, totals);
}

interface Sum {
  readonly sum: number;
  /** The same with every value counted positive. */
  readonly size: number;
}

function onStretch(of: (share: number) => readonly number[], start: number, end: number): Sum[] {
  const half = (end - start) / 2;
  const sums: { sum: number; size: number }[] = [];
  for (const [place, weight] of FIVE_POINTS) {
    for (const [index, value] of of(start + half * (1 + place)).entries()) {
      const total = (sums[index] ??= { sum: 0, size: 0 });
      total.sum += weight * half * value;
      total.size += weight * half * Math.abs(value);
    }
  }
  return sums;
}
