import { sideLength } from '../../geometry/index.ts';
import type { Key } from '../../job/job.ts';
import type { LogEntry, Stage } from '../../job/log.ts';
import { Logged } from '../../schedule/logged.ts';
import { DISPOSAL } from '../../pricing/disposal-costs.ts';
import { type Minor, decimalText, minorOf, sumOf } from '../../money/money.ts';
import type { Work } from '../../pricing/cost-line.ts';
import type { Costs } from '../../pricing/costs.ts';
import { isOnConcrete } from '../../schedule/edging-tasks.ts';
import { edgingNamed } from './built-edging.ts';
import type { Side } from './built.ts';
import { type Prices, STAGE_OF_TASK } from './again.ts';
import type { Again, Bought, Built, ChangePrice, ChangePriceLine } from './contract.ts';
import { shareOf, timesAmount } from './money-times.ts';

/** Costs, price, tax and what is to pay, in hundredths. */
interface Sums {
  readonly costs: Minor;
  readonly price: Minor;
  readonly tax: Minor;
}

export interface ChangePriceInputs {
  readonly older: Side;
  readonly newer: Side;
  readonly built: readonly Built[];
  readonly bought: readonly Bought[];
  readonly again: Again;
  readonly log: readonly LogEntry[];
  readonly keyNow: (key: Key) => Key;
}

/**
 * What the change comes to: the whole job in both texts; what is spent already and is not saved by it, since work was
 * done, goods were delivered, things were hired; and what is hired and carted once more.
 */
export function changePrice(inputs: ChangePriceInputs, { before, after }: Prices): ChangePrice | undefined {
  if (before === undefined || after === undefined || before.currency !== after.currency) return undefined;
  const { older, built, bought, again, keyNow } = inputs;
  const whole: Sums = {
    costs: after.costs - before.costs,
    price: after.price - before.price,
    tax: after.tax - before.tax
  };
  const costs: readonly (readonly [ChangePriceLine['id'], Minor])[] = [
    ['lost', lostCosts(older, before, built, keyNow)],
    ['goods', goodsCosts(bought, before)],
    ['spent', spentCosts(inputs, before, after)],
    ['again', sumOf(again.hires.map(({ cost }) => minorOf(cost ?? '0.00'))) + loadsAgain(inputs, before, after)]
  ];
  const besides = costs.filter(([, cost]) => cost > 0n).map(([id, cost]) => ({ id, ...priced(cost, after) }));
  const all = [{ id: 'whole' as const, ...whole }, ...besides];
  const together = {
    costs: sumOf(all.map(one => one.costs)),
    price: sumOf(all.map(one => one.price)),
    tax: sumOf(all.map(one => one.tax))
  };
  const known = new Set(before.unpriced.map(({ title }) => title));
  // Of what had no price all along it counts whether there is more or less of it.
  const moved = new Set(
    bought.flatMap(({ item, wanted, wantedBefore = 0 }) => (wanted === wantedBefore ? [] : [item]))
  );
  return {
    currency: after.currency,
    before: inDecimals(before),
    lines: all.map(({ id, ...sums }) => ({ id, ...inDecimals(sums) })),
    together: inDecimals(together),
    without: leftOut(built),
    unpriced: after.unpriced.flatMap(({ title, inside }) =>
      inside === true || (known.has(title) && !moved.has(title)) ? [] : [title]
    )
  };
}

function inDecimals({ costs, price, tax }: Sums): ChangePrice['together'] {
  return {
    costs: decimalText(costs),
    price: decimalText(price),
    tax: decimalText(tax),
    toPay: decimalText(price + tax)
  };
}

/** Goods that are there and that the newer text has no use for: they are paid for. */
function goodsCosts(bought: readonly Bought[], { lines }: Costs): Minor {
  return sumOf(
    bought.flatMap(({ item, noLongerWanted, wantedBefore = 0 }) => {
      const cost = lines.find(({ kind, title }) => kind === 'material' && title === item)?.cost ?? 0n;
      return noLongerWanted > 0 && wantedBefore > 0 ? [shareOf(cost, Math.min(1, noLongerWanted / wantedBefore))] : [];
    })
  );
}

/** What the newer text would save in carting away and in hire, where it was carted and hired for already. */
function spentCosts({ older, log, keyNow }: ChangePriceInputs, before: Costs, after: Costs): Minor {
  const logged = new Logged(log);
  const isDone = (stage: Stage): boolean =>
    older.job.areas.length > 0 && older.job.areas.every(({ key }) => logged.reached(keyNow(key), stage) !== undefined);
  const saved = (title: string): Minor => {
    const saving = costOf(before, title) - costOf(after, title);
    return saving > 0n ? saving : 0n;
  };
  const hires = older.job.money.hires.filter(({ tasks }) => {
    const stages = tasks.map(task => STAGE_OF_TASK[task]);
    return stages.length > 0 && stages.every(stage => stage !== undefined && isDone(stage));
  });
  return sumOf([...hires.map(({ title }) => saved(`Hire: ${title}`)), ...(isDone('dig') ? [saved(DISPOSAL)] : [])]);
}

/** What is dug when the lorry is gone takes a load of its own, by the load or the container. */
function loadsAgain({ newer, built }: ChangePriceInputs, before: Costs, after: Costs): Minor {
  const { disposal } = newer.job.money;
  if (disposal === undefined || (disposal.by !== 'load' && disposal.by !== 'container')) return 0n;
  const digs = built.flatMap(({ stage, amounts }) =>
    stage === 'dig' ? amounts.filter(({ measure }) => measure === 'm3') : []
  );
  const more = digs.reduce((sum, { toBuild }) => sum + toBuild, 0);
  const one = timesAmount(disposal.charge.amount, 1);
  if (more === 0 || one === 0n || !(newer.quantities.dig.bankVolume > 0)) return 0n;
  const loads = Number(costOf(after, DISPOSAL)) / Number(one);
  const cost = timesAmount(
    disposal.charge.amount,
    Math.max(1, Math.ceil((loads * more) / newer.quantities.dig.bankVolume - 1e-6))
  );
  const already = costOf(after, DISPOSAL) - costOf(before, DISPOSAL);
  return cost > already ? cost - (already > 0n ? already : 0n) : 0n;
}

function costOf({ lines }: Costs, title: string): Minor {
  return sumOf(lines.filter(line => line.title === title).map(({ cost }) => cost));
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
  const material = edgingNamed(job, name);
  if (material === undefined || !isOnConcrete(material)) return () => false;
  return title => title === material.name || title === `${material.name} for curves` || title === job.concrete.name;
}

/** Straight pieces by the straight runs that come out, pieces for curves by the curves. */
function edgingShare({ out = [], area, material }: Built, title: string, share: number, { job }: Side): number {
  const shape = title === `${material} for curves` ? 'curve' : title === material ? 'straight' : undefined;
  const hasCurvePieces = edgingNamed(job, material)?.curvePieces !== undefined;
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

function leftOut(built: readonly Built[]): ChangePrice['without'] {
  const isAny = (of: 'comesOut' | 'madeOtherwise'): boolean =>
    built.some(({ stage, amounts }) => stage !== 'dig' && amounts.some(amount => amount[of] > 0));
  const givenUp = built.some(({ stage, amounts }) => stage === 'dig' && amounts.some(({ comesOut }) => comesOut > 0));
  return [
    ...(isAny('comesOut') || isAny('madeOtherwise') ? (['taking-out', 'used-again'] as const) : []),
    ...(givenUp ? (['filling'] as const) : [])
  ];
}
