import type { Buying, Given, Key } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { NOT_NEGATIVE, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';
import { takingOut } from './said-once.ts';
import type { Usuals } from './usuals.ts';

/** More of a unit put by than this is a slip of the key. */
const MOST_KEPT = 100_000;

/** A wider cut of a saw is a slip of the key, m. */
const WIDEST_CUT = 0.025;

/** What the job says of buying units: breakage, what is kept, the saw's cut, where offcuts may go. */
export function readBuying(
  context: Context,
  text: SpecText,
  node: ast.Job | undefined,
  said: ReadonlyMap<string, ast.JobItem>,
  usuals: Usuals
): Buying {
  const breakageItem = said.get('breakage') as ast.JobMeasure | undefined;
  const sawItem = said.get('saw-cut') as ast.JobMeasure | undefined;
  const breakage =
    breakageItem && context.given(text, 'job/breakage', breakageItem.value as Expression, '', NOT_NEGATIVE);
  if (breakage !== undefined && breakage.value >= 1) {
    const bare = /^[0-9.]+$/.test(breakage.written) && breakage.value < 100;
    context.fault(
      text,
      'job',
      breakageItem!,
      'out-of-range',
      `Breakage is a share of the units: write \`2 %\`, not \`${breakage.written}\`.`,
      { property: 'value', fixes: bare ? [writing(`${breakage.written} %`)] : [] }
    );
  }
  const saw = sawItem && context.given(text, 'job/saw-cut', sawItem.value as Expression, 'm', NOT_NEGATIVE);
  if (saw !== undefined && saw.value > WIDEST_CUT)
    context.fault(
      text,
      'job',
      sawItem!,
      'out-of-range',
      `No blade takes ${saw.written}: a saw's cut is a few millimetres wide, about 1/8 in.`,
      { property: 'value' }
    );
  return {
    ...(breakage === undefined ? {} : { breakage }),
    keep: keptUnits(context, text, node),
    sawCut: saw ?? usuals.of('saw-cut', undefined) ?? NO_SAW,
    offcutsStay: said.has('JobOffcuts')
  };
}

const NO_SAW: Given = { value: 0, written: '0' };

function keptUnits(context: Context, text: SpecText, node: ast.Job | undefined): Buying['keep'] {
  const kept = new Map<Key, { readonly unit: Key; readonly count: Given; readonly item: ast.JobKeep }>();
  for (const item of node?.items.filter(ast.isJobKeep) ?? []) {
    // A statement broken off has told its own fault.
    if (item.count === undefined) continue;
    const found = context.find(text, 'job', item, 'unit', item.unit?.$refText, ['unit']);
    if (found === undefined) continue;
    const unit = `unit:${found.name}`;
    const count = Number(item.count);
    const first = kept.get(unit);
    if (first !== undefined)
      context.fault(text, 'job', item, 'said-twice', `\`keep\` is said twice of ${found.name}; the first counts.`, {
        harmless: true,
        related: [{ node: first.item, text, message: 'Said first here.' }],
        fixes: [takingOut(context, text, item, { like: first.item })]
      });
    else if (!Number.isInteger(count) || count > MOST_KEPT)
      context.fault(
        text,
        'job',
        item,
        'out-of-range',
        `Whole units are kept: write a whole number, such as \`keep 4 ${found.name}\`.`,
        {
          property: 'count',
          fixes: count > 0 && count < MOST_KEPT && item.count.includes('.') ? [writing(`${Math.ceil(count)}`)] : []
        }
      );
    else {
      const key = context.place(`job/keep/${found.name}`, text, item);
      kept.set(unit, { unit, count: { value: count, key, written: item.count }, item });
    }
  }
  return [...kept.values()].map(({ unit, count }) => ({ unit, count }));
}
