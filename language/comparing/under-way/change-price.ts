import { sideLength } from '../../geometry/index.ts';
import type { Key } from '../../job/job.ts';
import { type Minor, decimalText, minorOf, sumOf } from '../../money/money.ts';
import type { Work } from '../../pricing/cost-line.ts';
import type { Costs } from '../../pricing/costs.ts';
import { isOnConcrete } from './bought.ts';
import type { Side } from './built.ts';
import type { Again, Built, ChangePrice, ChangePriceLine } from './contract.ts';
import { shareOf } from './money-times.ts';

/** Costs, price, tax and what is to pay, in hundredths. */
interface Sums {
  readonly costs: Minor;
  readonly price: Minor;
  readonly tax: Minor;
}

/** What the change comes to: the whole job in both texts, what is built in vain, and what is hired once more. */
export function changePrice(
  older: Side,
  { before, after }: { readonly before: Costs | undefined; readonly after: Costs | undefined },
  built: readonly Built[],
  again: Again,
  keyNow: (key: Key) => Key
): ChangePrice | undefined {
  if (before === undefined || after === undefined || before.currency !== after.currency) return undefined;
  const whole: Sums = {
    costs: after.costs - before.costs,
    price: after.price - before.price,
    tax: after.tax - before.tax
  };
  const lost = priced(lostCosts(older, before, built, keyNow), after);
  const hired = priced(sumOf(again.hires.map(({ cost }) => minorOf(cost ?? '0.00'))), after);
  const lines = [
    line('The whole job, as if nothing were built yet', whole),
    ...(lost.costs === 0n ? [] : [line('Built, and taken out', lost)]),
    ...(hired.costs === 0n ? [] : [line('Hired once more', hired)])
  ];
  const all = [whole, lost, hired];
  const { label: _, ...together } = line('', {
    costs: sumOf(all.map(({ costs }) => costs)),
    price: sumOf(all.map(({ price }) => price)),
    tax: sumOf(all.map(({ tax }) => tax))
  });
  return { currency: after.currency, lines, together, without: leftOut(built) };
}

function line(label: string, { costs, price, tax }: Sums): ChangePriceLine {
  const [atCost, without, taxed, toPay] = [costs, price, tax, price + tax].map(decimalText);
  return { label, costs: atCost!, price: without!, tax: taxed!, toPay: toPay! };
}

/** A cost with overhead, margin and tax as the newer text has them. */
function priced(costs: Minor, { costs: all, passedOn, price, takenOff, tax, taxed }: Costs): Sums {
  const bearing = all - passedOn;
  const share = bearing > 0n ? Number(price - passedOn - takenOff) / Number(bearing) : 1;
  const own = shareOf(costs, share);
  return { costs, price: own, tax: taxed > 0n ? shareOf(own, Number(tax) / Number(taxed)) : 0n };
}

const WORK_OF_STAGE: Readonly<Record<Built['stage'], Work>> = {
  dig: 'dig',
  geotextile: 'geotextile',
  'sub-base': 'sub-base',
  base: 'base',
  bed: 'bed',
  paving: 'paving',
  joints: 'joints',
  edging: 'edging'
};

/** Work on what comes out or is made otherwise; of edging in concrete, what it is made of besides. */
function lostCosts(older: Side, { lines }: Costs, built: readonly Built[], keyNow: (key: Key) => Key): Minor {
  const parts = lines.flatMap(({ kind, title, parts: own }) => own.map(part => ({ kind, title, ...part })));
  return sumOf(
    built.flatMap(one => {
      const amount = one.amounts[0];
      if (amount === undefined || !(amount.built > 0)) return [];
      const isLost = isLostWith(older, one);
      const share = (amount.comesOut + amount.madeOtherwise) / amount.built;
      return parts
        .filter(
          ({ area, work }) => area !== undefined && keyNow(area) === one.area && work === WORK_OF_STAGE[one.stage]
        )
        .filter(({ kind, title }) => kind === 'labour' || isLost(title))
        .map(({ cost, title }) =>
          shareOf(cost, one.stage === 'edging' ? edgingShare(one, title, share, older) : share)
        );
    })
  );
}

/** Edging in concrete is broken out: its pieces and its concrete are lost. */
function isLostWith({ job }: Side, { material: name }: Built): (title: string) => boolean {
  const material = job.areas.flatMap(({ edges }) => edges).find(({ edging }) => edging?.name === name)?.edging;
  if (material === undefined || !isOnConcrete(material)) return () => false;
  return title => title === material.name || title === `${material.name} for curves` || title === job.concrete.name;
}

/** Straight pieces by the straight runs that come out, pieces for curves by the curves. */
function edgingShare({ out = [], area, material }: Built, title: string, share: number, { job }: Side): number {
  const shape = title === `${material} for curves` ? 'curve' : title === material ? 'straight' : undefined;
  const hasCurvePieces = job.areas
    .flatMap(({ edges }) => edges)
    .some(({ edging }) => edging?.name === material && edging?.curvePieces !== undefined);
  if (shape === undefined || !hasCurvePieces) return share;
  const outline = job.areas.find(({ key }) => key === area);
  const lengths = (outline?.edges ?? []).flatMap(({ edging }, index) => {
    const side = outline!.outline[index]!;
    const isOwn = edging?.name === material && (side.arc === undefined ? 'straight' : 'curve') === shape;
    return isOwn ? [sideLength(side)] : [];
  });
  const all = lengths.reduce((sum, length) => sum + length, 0);
  const gone = out.find(one => one.shape === shape)?.length ?? 0;
  return all > 0 ? gone / all : 0;
}

function leftOut(built: readonly Built[]): string[] {
  const isOut = built.some(({ amounts }) => amounts.some(({ comesOut }) => comesOut > 0));
  const isOtherwise = built.some(({ amounts }) => amounts.some(({ madeOtherwise }) => madeOtherwise > 0));
  return [
    ...(isOut || isOtherwise
      ? ['Taking out and carting away what is built: no rate tells its hours. `extra` names an amount for it.']
      : []),
    ...(isOut ? ['Stone, sand, cloth and units that come out count as used again; edging in concrete does not.'] : [])
  ];
}
