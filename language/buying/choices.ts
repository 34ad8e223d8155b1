import { Ledger, quantity } from '../money/ledger.ts';
import { decimalText } from '../money/money.ts';
import { divide, measured, multiply, notBelowNought, roundedUp, subtract } from '../quantities/arithmetic.ts';
import type { Book } from '../quantities/page.ts';
import { cheapestAlone } from './cheapest-cover.ts';
import type { Need } from './needs.ts';
import { costOf, oneHolds } from './offer-cost.ts';
import type { OfferedOrder } from './offers.ts';
import type { ChoiceQuantities } from './order-contract.ts';
import { costOfPacks, priceRanges } from './price-ranges.ts';
import { pricedTerms } from './priced-problem.ts';
import { deliveryOf, refusalOf } from './reckoned-order.ts';
import { taxInAmount } from './tax-basis.ts';
import { si } from './used.ts';

/** Each way by itself in which a need could be covered: bagged beside loose, with what each costs and leaves. */
export function choicesOf(need: Need, offered: OfferedOrder, book: Book, ledger: Ledger): ChoiceQuantities[] {
  const { problem, offers, needs } = offered;
  const item = needs.indexOf(need);
  const own = offers.flatMap((offer, index) =>
    offer.holds.length === 1 && offer.holds[0]!.need === item && offer.way.word !== 'mixed-pack'
      ? [{ offer, index }]
      : []
  );
  return own.flatMap(({ offer, index }, at) => {
    const pack = problem.packs[index]!;
    const ranges = priceRanges(pack);
    const way = { holds: pack.holds[0]!.amount, ranges };
    const count = cheapestAlone(problem.needs[item]!, way)?.packs;
    if (count === undefined) return [];
    const pointer = `${need.at}/choices/${at}`;
    const page = book.page('choice', pointer);
    const { measure } = offer;
    const [{ given: held, amount: holds }] = offer.holds as readonly [(typeof offer.holds)[number]];
    const wanted = need.toBuy.get(measure)!;
    const one = oneHolds(offer, held);
    const least = roundedUp(divide(wanted, one));
    const packs = page.put(
      'count',
      least.value === count ? least : measured('cheapest count', count, '', need.thing.key)
    );
    const amount = page.put('amount', multiply(packs, one), si(measure));
    page.put('left', notBelowNought(subtract(amount, wanted)), si(measure));
    const counted = quantity('packs', count, '', { pointer: `${pointer}/count` });
    const cost = ledger.put(`${pointer}/cost`, costOf(offer, counted, offered.basis));
    const terms = pack.supplier === undefined ? undefined : problem.suppliers[pack.supplier];
    const alone = [{ pack, count, cost: costOfPacks(ranges, count)! }];
    const delivery = terms && deliveryOf(pricedTerms(terms), alone);
    const notTaken = terms !== undefined && delivery === undefined ? refusalOf(terms, alone) : undefined;
    const tax = taxInAmount(offered.basis, offer.tax);
    return [
      {
        pack: offer.words,
        sold: offer.way.key,
        measure,
        ...(offer.supplier === undefined ? {} : { supplier: offer.supplier.key }),
        ...(tax === undefined ? {} : { tax }),
        packHolds: holds,
        ...page.numbers,
        cost: decimalText(cost),
        ...(delivery === undefined ? {} : { delivery: decimalText(delivery.cost) }),
        ...(notTaken === undefined ? {} : { notTaken })
      }
    ];
  });
}
