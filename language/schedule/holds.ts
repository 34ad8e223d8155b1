import type { Given, System } from '../job/job.ts';
import { printAs } from '../measures/print.ts';
import type { Hold } from './contract.ts';
import type { Wait } from './draft.ts';
import type { Planned } from './planned.ts';

const PRACTICE = { source: 'common practice', status: 'practice' } as const;

/** Working days, Monday to Friday, that those who own the lines are given to mark them: common practice. */
export const LEAD_DAYS = 3;

/** Where neither the edging nor the concrete says how long it sets, in days: common practice. */
const USUAL_CONCRETE_WAIT = 3;

/** Sand in unbound joints settles for so many days before they are filled a second time: common practice. */
const SECOND_SWEEPING_AFTER = 7;

const DAY = 24 * 60 * 60;

export const LEAD: Hold = {
  kind: 'lead',
  text: `Ask at least ${LEAD_DAYS} working days before the dig; local rules may ask for more. Nothing is dug before the marks and plans are there.`,
  days: LEAD_DAYS,
  ...PRACTICE
};

/** Days that concrete sets before something is compacted against it. */
export function concreteDays(wait: Given | undefined): number {
  return wait === undefined ? USUAL_CONCRETE_WAIT : Math.ceil(wait.value / DAY - 1e-9);
}

/** The wait before something is compacted against concrete. */
export function concreteWait(on: string, what: string, wait: Given | undefined): Wait {
  const days = concreteDays(wait);
  return {
    on,
    days,
    from: 'hour',
    hold: {
      kind: 'concrete',
      text: `${days === 1 ? '1 day' : `${days} days`} for the concrete of ${what} to set before anything is compacted against it.`,
      days,
      ...(wait === undefined || wait.assumed !== undefined ? PRACTICE : { source: 'the job', status: 'practice' })
    }
  };
}

/** `keptBack`: share of the filler, where it is told. */
export function secondSweepingWait(on: string, keptBack: number | undefined): Wait {
  return {
    on,
    days: SECOND_SWEEPING_AFTER,
    from: 'morning',
    hold: {
      kind: 'second-sweeping',
      text: `${SECOND_SWEEPING_AFTER} days after the first sweeping, when the filler has settled. Keep ${keptBack === undefined ? 'some' : printAs('share', keptBack, 'metric')} of it back for this.`,
      days: SECOND_SWEEPING_AFTER,
      ...PRACTICE
    }
  };
}

/** Where winters are not told to be mild. */
export function frostHold({ areas }: Planned, what: 'stone' | 'bed' | 'concrete', system: System): Hold[] {
  if (areas.every(({ area }) => area.site.winters === 'mild')) return [];
  return [{ kind: 'frost', text: FROST[what](system), ...PRACTICE }];
}

const FROST: Readonly<Record<'stone' | 'bed' | 'concrete', (system: System) => string>> = {
  stone: () => 'Not on frozen ground, nor with frozen stone.',
  bed: () => 'Not on a frozen base, nor with frozen sand.',
  concrete: system =>
    `Not on frozen ground, nor below about ${system === 'imperial' ? '40 °F' : '5 °C'}; cover it against frost.`
};

export const BOUND_FILLER_DRY: Hold = {
  kind: 'weather',
  text: 'Once only, into dry joints, with dry weather until it has set: its maker says how long.',
  ...PRACTICE
};

export const BED_BEFORE_RAIN: Hold = {
  kind: 'weather',
  text: 'No more is screeded than is covered with units before rain and by the end of the day.',
  ...PRACTICE
};
