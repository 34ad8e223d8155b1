import type { Expression, Formula, Part } from './arithmetic.ts';
import type { Working, WorkingValue } from './contract.ts';

type Named = Extract<Formula, { readonly kind: 'name' }>;

/**
 * The working of a number as text and values: `gross area - kept-out area`, with `×` and `/`, `larger of (…)`,
 * `rounded up (…)`. Two values that share a name are told apart by a number behind the second.
 */
export function workingOf(expression: Expression): Working {
  const names = new Names();
  const formula = text(expression.formula, names);
  return { formula, values: names.values };
}

/** A formula that only repeats another number explains nothing; a measurement on a shape needs no more than its name. */
export function isBareName(expression: Expression): boolean {
  return expression.formula.kind === 'name' && !('shape' in expression.formula.from);
}

class Names {
  readonly values: WorkingValue[] = [];
  readonly #taken = new Map<string, string>();

  /** The name under which a value stands in this formula. */
  of({ name, value, measure, from, written }: Named): string {
    const content = JSON.stringify([value, measure, from]);
    for (let count = 1; ; count++) {
      const candidate = count === 1 ? name : `${name} ${count}`;
      const taken = this.#taken.get(candidate);
      if (taken === content) return candidate;
      if (taken !== undefined) continue;
      this.#taken.set(candidate, content);
      this.values.push({ name: candidate, value, measure, from, ...(written === undefined ? {} : { written }) });
      return candidate;
    }
  }
}

function text(formula: Formula, names: Names): string {
  switch (formula.kind) {
    case 'name':
      return names.of(formula);
    case 'number':
      return String(formula.value);
    case 'sum':
      return joined(formula.terms, names, ' + ', ' - ', part => part.inverse && part.of.kind === 'sum');
    case 'product':
      return joined(
        formula.terms,
        names,
        ' × ',
        ' / ',
        part => part.of.kind === 'sum' || (part.inverse && part.of.kind === 'product')
      );
    case 'call':
      return `${formula.name} (${formula.of.map(one => text(one, names)).join(', ')})`;
  }
}

function joined(
  parts: readonly Part[],
  names: Names,
  forward: string,
  backward: string,
  bracketed: (part: Part) => boolean
): string {
  return parts
    .map((part, index) => {
      const inner = text(part.of, names);
      const shown = bracketed(part) ? `(${inner})` : inner;
      return index === 0 ? shown : (part.inverse ? backward : forward) + shown;
    })
    .join('');
}
