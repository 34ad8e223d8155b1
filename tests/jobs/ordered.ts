import type {
  BuyingQuantities,
  ChoiceQuantities,
  OrderCost,
  OrderQuantities
} from '../../language/buying/order-contract.ts';
import type { Entered } from './read.ts';

/** What is ordered for a job. */
export class Ordered {
  readonly #buying: BuyingQuantities;

  constructor({ evaluation }: Entered) {
    this.#buying = evaluation.numbers!.quantities;
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

  get cost(): OrderCost {
    return this.#buying.orderCost!;
  }

  /** What one supplier brings, kg. */
  mass(supplier: string): number {
    return this.#from(supplier).mass!;
  }

  loads(supplier: string): number {
    return this.#from(supplier).loads!;
  }

  #row(item: string): OrderQuantities {
    return only(
      this.#buying.order!.filter(one => one.item === item),
      `line of ${item}`
    );
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
