import { decimalText } from '../money/money.ts';
import { isAlike } from './alike.ts';
import type { Compared } from './compared.ts';
import type { Comparison, MoneyChange, TaskChange } from './contract.ts';
import { nameOf, type NewNames } from './new-names.ts';

/** Amounts in two currencies can't be compared: that the currency is another stands among the edits. */
export function moneyChanges({ priced: older }: Compared, { priced: newer }: Compared): MoneyChange[] {
  const [before, after] = [older?.costs, newer?.costs];
  const currency = (after ?? before)?.currency;
  if (currency === undefined || (before && after && before.currency !== after.currency)) return [];
  const rows = [
    ['costs', 'Costs', before?.costs, after?.costs],
    ['price', 'Price without tax', before?.price, after?.price],
    ['tax', 'Tax', before?.tax, after?.tax],
    ['to-pay', 'To pay', before?.total, after?.total]
  ] as const;
  return rows.flatMap(([id, label, old, now]) =>
    old === now
      ? []
      : [
          {
            id,
            label,
            currency,
            ...(old === undefined ? {} : { before: decimalText(old) }),
            ...(now === undefined ? {} : { after: decimalText(now) })
          }
        ]
  );
}

/** Laying is a task of its own for each area and bond: `laying/terrace/running-bond`. */
function taskNow(id: string, names: NewNames): string {
  const [word, area, bond] = id.split('/');
  if (word !== 'laying' || area === undefined || bond === undefined) return id;
  return [word, nameOf(names, { kind: 'area', name: area }), nameOf(names, { kind: 'bond', name: bond })].join('/');
}

export function taskChanges({ priced: older }: Compared, { priced: newer }: Compared, names: NewNames): TaskChange[] {
  const before = new Map((older?.schedule.tasks ?? []).map(task => [taskNow(task.id, names), task]));
  const after = new Map((newer?.schedule.tasks ?? []).map(task => [task.id, task]));
  const ids = [...after.keys(), ...[...before.keys()].filter(id => !after.has(id))];
  return ids.flatMap((id): TaskChange[] => {
    const [old, now] = [before.get(id), after.get(id)];
    const [was, is] = [old?.hours, now?.hours];
    const isKept = old !== undefined && now !== undefined;
    if (isKept && (was === is || (was !== undefined && is !== undefined && isAlike(was, is)))) return [];
    const title = (now ?? old)!.title.replace(/:.*$/, '');
    return [{ id, title, ...(was === undefined ? {} : { before: was }), ...(is === undefined ? {} : { after: is }) }];
  });
}

export function daysOf({ priced: older }: Compared, { priced: newer }: Compared): Pick<Comparison, 'days'> {
  const [before, after] = [older?.days, newer?.days];
  return before === undefined || after === undefined || before === after ? {} : { days: { before, after } };
}
