import type { Severity } from '../../job/severity.ts';
import { hasCuts, type LegendTold, legendTold, type Sign } from '../plan/legend.ts';
import { ofTheFinish } from '../plan/heights-from.ts';
import type { PlanInput } from '../plan/plan-input.ts';
import { CUTTING_CAUTION } from '../text/cautions.ts';
import { LEVEL_MARK } from './level-areas.ts';
import type { Content, LiveLegendLine } from './live-plan.ts';

/** The legend of what is there, in the words of printed plans, with the signs of findings that are there. */
export function legendLines(input: PlanInput, severities: ReadonlySet<Severity>): LiveLegendLine[] {
  const taken = new Map<string, number>();
  let heading = '';
  const heights = input.site?.heights;
  const aboutHeights = heights === undefined ? undefined : ofTheFinish(heights);
  const lines = legendTold(input).flatMap((told): LiveLegendLine[] => {
    const sign = told.sign === undefined ? ({ none: true } as const) : signOf(told.sign);
    if (sign === undefined) return [];
    const [first = ''] = told.texts;
    if (told.strong) heading = first;
    const name = told.strong ? first : `${isOfArea(told) ? `${heading}/` : ''}${first}`;
    const times = (taken.get(name) ?? 0) + 1;
    taken.set(name, times);
    if (first === aboutHeights) return [{ key: 'heights', sign, text: `${LEVEL_MARK} ${first}`, content: 'heights' }];
    const content = contentOf(told);
    return [
      {
        key: times === 1 ? name : `${name}~${times}`,
        sign,
        text: told.texts.join(', '),
        ...(told.strong ? { strong: true } : {}),
        ...(content === undefined ? {} : { content })
      }
    ];
  });
  return [...lines, ...findingLines(severities), ...(hasCuts(input) ? [CUTTING] : [])];
}

const CUTTING: LiveLegendLine = { key: 'caution', sign: { none: true }, text: CUTTING_CAUTION, content: 'cuts' };

const FINDINGS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  note: 'note'
};

function findingLines(severities: ReadonlySet<Severity>): LiveLegendLine[] {
  return (['error', 'warning', 'note'] as const)
    .filter(severity => severities.has(severity))
    .map(mark => ({
      key: `finding/${mark}`,
      sign: { mark },
      text: `${FINDINGS[mark]}: what is found stands with the thing`,
      content: 'findings'
    }));
}

/** Ticks are drawn on paper alone. */
function signOf(sign: Sign): LiveLegendLine['sign'] | undefined {
  if ('ink' in sign) return { ink: sign.ink, ...(sign.tint === undefined ? {} : { tint: sign.tint }) };
  if ('stroke' in sign) return { line: sign.stroke };
  if ('line' in sign) return { line: sign.line };
  if ('leaf' in sign) return { line: 'leaf' };
  if ('fall' in sign) return { mark: 'fall' };
  if ('point' in sign) return { mark: 'point' };
  if ('dot' in sign) return { mark: sign.dot === 'diamond' ? 'diamond' : 'dot' };
  if ('arrow' in sign) return { mark: 'start' };
  if ('cross' in sign) return { mark: 'centre' };
  return undefined;
}

const BY_INK: Readonly<Partial<Record<string, Content>>> = {
  whole: 'units',
  border: 'units',
  cut: 'cuts',
  'kept-out': 'kept-out',
  'outline-only': 'edges'
};

function contentOf({ sign, strong }: LegendTold): Content | undefined {
  if (strong || sign === undefined) return undefined;
  if ('ink' in sign) return BY_INK[sign.ink] ?? 'things';
  if ('line' in sign) return 'edges';
  if ('fall' in sign) return 'falls';
  if ('point' in sign || ('dot' in sign && sign.dot === 'diamond')) return 'points';
  if ('arrow' in sign || 'cross' in sign) return 'starts';
  return 'things';
}

/** Units stand under the heading of their area. */
function isOfArea({ sign }: LegendTold): boolean {
  return sign !== undefined && 'ink' in sign && ['whole', 'border', 'outline-only'].includes(sign.ink);
}
