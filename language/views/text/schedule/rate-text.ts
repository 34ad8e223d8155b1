import type { System } from '../../../job/job.ts';
import type { Rate } from '../../../job/work.ts';
import { measureNamed } from '../../../measures/measures.ts';

type Per = Rate['per'];

/** What amounts are told in beside hours: so much SI, and what it is called; `many`: rates are told for so many. */
interface Told {
  readonly size: number;
  readonly words: string;
  readonly many: number;
}

const size = (spelling: string): number => measureNamed(spelling)!.factor.valueOf();

const TOLD: Readonly<Record<System, Readonly<Record<Per, Told>>>> = {
  metric: {
    m3: { size: 1, words: 'm3', many: 1 },
    m2: { size: 1, words: 'm2', many: 1 },
    m: { size: 1, words: 'm', many: 1 },
    kg: { size: size('t'), words: 't', many: 1 },
    piece: { size: 1, words: 'pieces', many: 1 },
    job: { size: 1, words: 'job', many: 1 }
  },
  imperial: {
    m3: { size: size('cu yd'), words: 'cu yd', many: 1 },
    m2: { size: size('sq ft'), words: 'sq ft', many: 100 },
    m: { size: size('ft'), words: 'ft', many: 100 },
    kg: { size: size('short ton'), words: 'short tons', many: 1 },
    piece: { size: 1, words: 'pieces', many: 1 },
    job: { size: 1, words: 'job', many: 1 }
  }
};

/** An amount in the measures of a job: `14.8 cu yd`; of the job as a whole nothing. */
export function amountText(value: number, per: Per, system: System): string {
  const { size: one, words } = TOLD[system][per];
  const told = threeDigits(value / one);
  return per === 'job' ? '' : `${told} ${per === 'piece' && told === '1' ? 'piece' : words}`;
}

/** Hours of one person for one of it: `1.49 h per cu yd`, `0.46 h per 100 sq ft`. */
export function rateText(takes: number, per: Per, system: System): string {
  const { size: one, words, many } = TOLD[system][per];
  const hours = `${threeDigits(takes * one * many)} h`;
  if (per === 'job') return `${hours} for the job`;
  const each = per === 'piece' ? 'piece' : words.replace(/s$/, '');
  return `${hours} per ${many === 1 ? each : `${many} ${each}`}`;
}

/** As few digits as tell it to a thousandth part. */
function threeDigits(value: number): string {
  const size = Math.abs(value);
  return Number(size >= 100 ? value.toFixed(0) : value.toPrecision(3)).toString();
}
