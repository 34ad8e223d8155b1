import type { Given, Key } from '../job/job.ts';
import type { TaxIn } from '../buying/tax-basis.ts';
import type { Money } from '../job/prices.ts';
import type { CostKind, CostLine, CostPart, CostPlace, Unpriced } from './cost-line.ts';
import { Ledger, over, plus, quantity, type Reckoned, whole, written } from '../money/ledger.ts';
import { exact, type Minor, split } from '../money/money.ts';

/** A cost as it is put on the sheet. */
export interface NewLine {
  readonly id: string;
  readonly kind: CostKind;
  readonly title: string;
  readonly amount: Reckoned;
  /** Where it goes, by weights that are told as exact numbers; empty: to the job as a whole. */
  readonly shares: readonly (CostPlace & { readonly amount: number })[];
  /** Where it goes that has no shares. */
  readonly place: CostPlace;
  readonly untaxed?: boolean;
  readonly passedOn?: boolean;
}

/** The cost lines of a job as they come together, with what has no price and what was assumed. */
export class CostSheet {
  readonly ledger: Ledger;
  readonly tax: Given | undefined;
  readonly lines: CostLine[] = [];
  readonly unpriced: Unpriced[] = [];
  readonly #assumed = new Set<string>();

  constructor(currency: string, tax: Given | undefined) {
    this.ledger = new Ledger(currency);
    this.tax = tax;
  }

  get assumed(): string[] {
    return [...this.#assumed];
  }

  assume(sentence: string): void {
    this.#assumed.add(sentence);
  }

  add({ id, kind, title, amount, shares, place, untaxed = false, passedOn = false }: NewLine): void {
    const pointer = `/costs/lines/${this.lines.length}`;
    const cost = this.ledger.put(`${pointer}/cost`, amount);
    const places = shares.length === 0 ? [{ ...place, amount: 1 }] : shares;
    const parts = this.#parts(this.ledger.named(title, cost, `${pointer}/cost`), cost, places, pointer);
    this.lines.push({ id, kind, title, cost, parts, untaxed, passedOn });
  }

  #parts(
    amount: Reckoned,
    cost: Minor,
    places: readonly (CostPlace & { readonly amount: number })[],
    pointer: string
  ): CostPart[] {
    const weights = places.map(share => exact(share.amount));
    const costs = split(cost, weights);
    const exactly = weights.reduce((sum, weight) => sum.add(weight), exact(0));
    const all = { ...quantity('all shares', exactly.valueOf(), '', SHARES), exact: exactly };
    return places.map(({ amount: weight, ...where }, index) => {
      const part = `${pointer}/parts/${index}`;
      const share = quantity('share of it', weight, '', SHARES);
      if (places.length > 1 && !exactly.equals(0)) this.ledger.share(`${part}/cost`, amount, share, all, costs[index]!);
      return { ...where, cost: costs[index]!, pointer: part };
    });
  }

  /** Says that something has no price; it is left out of every sum. */
  leaveOut(title: string, because: string, key?: Key): void {
    this.unpriced.push({ title, because, ...(key === undefined ? {} : { key }) });
  }

  /** The same of what stands on no client's sheet. */
  leaveOutInside(title: string, because: string): void {
    this.unpriced.push({ title, because, inside: true });
  }

  /** Whether a price is in the money of the job; if not, what it is of is left out. */
  counts(title: string, { currency, key }: Money): boolean {
    if (currency === this.ledger.currency) return true;
    this.leaveOut(title, `its price is in ${currency}, the job counts in ${this.ledger.currency}`, key);
    return false;
  }

  /** A price as it counts here: without tax, where the job says how much tax there is. */
  withoutTax(of: string, amount: Reckoned, way: TaxIn | undefined): Reckoned {
    const { tax } = this;
    if (tax === undefined || tax.value === 0) {
      if (way === 'added') this.assume(`Tax comes on top of the price of ${of}; the job says no tax, so it is not in.`);
      return amount;
    }
    if (way === undefined) this.assume(`Whether tax is in the price of ${of} is not said; taken as without.`);
    if (way !== 'included' && way !== 'taken-off') return amount;
    this.assume(`Tax of ${tax.written} is taken off prices that have it in, and put on the price once.`);
    if (way === 'taken-off') return amount;
    return over(amount, plus(whole(1), written('tax', tax)));
  }

  /** The cost of a line, as a value of another working. */
  named(index: number): Reckoned {
    const { title, cost } = this.lines[index]!;
    return this.ledger.named(title, cost, `/costs/lines/${index}/cost`);
  }
}

const SHARES = { assumed: 'by how much of it goes where' };
