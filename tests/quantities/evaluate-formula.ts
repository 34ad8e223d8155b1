/** A formula as printed, with a value for each of its names. */
export interface PrintedWorking {
  readonly formula: string;
  readonly values: readonly { readonly name: string; readonly value: number }[];
}

/** A count that exceeds a whole number by no more than this is that number; stands in the JSON schema. */
const HAIR = 1e-6;

/** Half goes away from nought; a hair under a half is the half that the doubles missed. */
function roundedHalfUp(amount: number): number {
  return (Math.sign(amount) * Math.floor(Math.abs(amount) * 100 + 0.5 + HAIR)) / 100;
}

/**
 * Works a printed formula out anew, from its text and values alone: sums of products of names, numbers, brackets and
 * `larger of (…)`, `rounded up (…)`, `rounded to hundredths (…)`. Throws on a name without value, and on a value that is
 * never used.
 */
export function evaluateFormula({ formula, values }: PrintedWorking): number {
  const pieces = formula.match(/\(|\)|,|[^\s(),]+/g) ?? [];
  const known = new Map(values.map(({ name, value }) => [name, value]));
  if (known.size !== values.length) throw new Error(`A name stands twice: ${formula}`);
  const used = new Set<string>();
  let at = 0;

  const take = (wanted: string): void => {
    if (pieces[at++] !== wanted) throw new Error(`${wanted} is missing in: ${formula}`);
  };

  const sum = (): number => {
    let total = product();
    while (pieces[at] === '+' || pieces[at] === '-') total += pieces[at++] === '+' ? product() : -product();
    return total;
  };

  const product = (): number => {
    let total = single();
    while (pieces[at] === '×' || pieces[at] === '/') {
      if (pieces[at++] === '×') total *= single();
      else total /= single();
    }
    return total;
  };

  const single = (): number => {
    if (pieces[at] === '(') return bracket()[0]!;
    if (/^\d+(?:\.\d+)?$/.test(pieces[at] ?? '')) return Number(pieces[at++]);
    const words: string[] = [];
    while (at < pieces.length && !/^(?:[-+×/(),])$/.test(pieces[at]!)) words.push(pieces[at++]!);
    const name = words.join(' ');
    if (name === 'larger of') return Math.max(...bracket());
    if (name === 'rounded up') return Math.ceil(bracket()[0]! - HAIR);
    if (name === 'rounded to hundredths') return roundedHalfUp(bracket()[0]!);
    const value = known.get(name);
    if (value === undefined) throw new Error(`No value for "${name}" in: ${formula}`);
    used.add(name);
    return value;
  };

  const bracket = (): number[] => {
    take('(');
    const inner = [sum()];
    while (pieces[at] === ',') {
      at++;
      inner.push(sum());
    }
    take(')');
    return inner;
  };

  const result = sum();
  if (at < pieces.length) throw new Error(`Something is left over in: ${formula}`);
  for (const { name } of values) if (!used.has(name)) throw new Error(`"${name}" is not used in: ${formula}`);
  return result;
}
