import type { BuyingQuantities, ChoiceQuantities, OrderQuantities } from '../../../language/buying/order-contract.ts';
import { Entered } from '../read.ts';

/** What is ordered for a job before anything came of it: its log left out. */
export class Ordered {
  readonly #buying: BuyingQuantities;

  private constructor(buying: BuyingQuantities) {
    this.#buying = buying;
  }

  static async before({ text }: Entered): Promise<Ordered> {
    const { evaluation } = await Entered.of(text.replace(/^log \{.*?^\}$/ms, ''));
    return new Ordered(evaluation.numbers!.quantities);
  }

  /** Packs of a thing, or steps of what is loose. */
  packs(item: string): number {
    return this.#row(item).count;
  }

  /** All that they hold, in SI. */
  amount(item: string): number {
    const { count, packHolds } = this.#row(item);
    return count * packHolds;
  }

  /** The need covered in one way alone; `pack` as it is sold, such as `bag`. */
  choice(item: string, pack: string): ChoiceQuantities {
    const choices = this.#buying.needs!.find(need => need.item === item)!.choices;
    return only(
      choices.filter(one => one.pack.startsWith(pack)),
      `${pack} of ${item}`
    );
  }

  /** What one supplier brings, kg. */
  mass(supplier: string): number {
    return this.#from(supplier).mass!;
  }

  loads(supplier: string): number {
    return this.#from(supplier).loads!;
  }

  #row(item: string): OrderQuantities {
    const row = only(
      this.#buying.order!.filter(one => one.item === item),
      `line of ${item}`
    );
    if (!row.proven) throw new Error(`${item} may be had for less`);
    return row;
  }

  #from(supplier: string): NonNullable<BuyingQuantities['deliveryCharges']>[number] {
    return only(
      this.#buying.deliveryCharges!.filter(({ name }) => name === supplier),
      supplier
    );
  }
}

function only<T>(all: readonly T[], name: string): T {
  if (all.length !== 1) throw new Error(`${all.length} for ${name}`);
  return all[0]!;
}
