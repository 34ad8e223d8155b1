import type { TextChange } from '../../findings/finding.ts';
import { written } from '../../findings/gap.ts';
import type { Area, Job, System } from '../../job/job.ts';
import type { Cutting } from '../../laying/starts/cutting.ts';
import { lower } from '../../lowering/lower.ts';
import { Placer } from '../../lowering/placer.ts';
import { sumsIn } from '../../lowering/sums.ts';
import type { Evaluation, Look } from '../../paving.ts';
import { cuttingAdvice, type AdviceAbout, type CuttingAdvice } from '../../quantities/cutting-advice.ts';
import { spanOf, type Statement } from '../../syntax/statement-tree.ts';
import { changeTitle, lengthText, savings, sizeText } from '../../views/start-words.ts';
import { applyChanges } from '../apply-changes.ts';
import { bringsNothingUp } from '../rewrites/holds.ts';
import { isBroken, topStatementAt } from '../rewrites/places.ts';
import { covers } from '../rewrites/rewrite.ts';
import { hasNames, onOneLine } from '../rewrites/written.ts';
import type { Offer } from './offer.ts';
import { startEdits, type AreaInText } from './start-edits.ts';

/** What is looked into at which statement of an area. */
const ABOUT: Readonly<Record<string, readonly AdviceAbout[]>> = {
  paving: ['starts', 'inboard'],
  start: ['starts', 'inboard'],
  outline: ['sizes']
};

/**
 * Changes at a place that leave less to cut in its area, each with what it saves in its title. They change numbers on
 * purpose: see `keepsPromise`. Long work, in steps.
 */
export function* offersAt(
  look: Look,
  { job, numbers }: Evaluation,
  start: number,
  end: number
): Generator<void, Offer[]> {
  const { parsed } = look.text;
  const statement = topStatementAt(parsed, start);
  if (job === undefined || statement?.word !== 'area' || isBroken(parsed, statement)) return [];
  const at = { start, end };
  const inner = statement.inside.find(({ first, end: past }) => covers(spanOf(parsed, first, past), at));
  const about = inner === undefined ? undefined : ABOUT[inner.word];
  const key = `area:${parsed.tokens[statement.first + 1]!.image}`;
  const area = job.areas.find(one => one.key === key);
  if (inner === undefined || about === undefined || area === undefined) return [];
  // Nothing is promised of an area that has no numbers.
  if (numbers?.quantities.missing.includes(key)) return [];
  const advice = yield* cuttingAdvice(job, area, about);
  if (advice === undefined) return [];
  const inText = { text: look.text, key, statement, gaps: lower(look.project).gaps };
  return [
    ...startOffers(inText, area, advice, job.system),
    ...inboardOffers(inText, advice, job.system),
    ...sizeOffers(look, inner, inText, advice, job.system)
  ];
}

/** Whether an offer does what it says: no new finding, no other area changed, and its own comes to what was promised. */
export function* keepsPromise(
  { area: key, promise }: Offer,
  before: Evaluation,
  after: Evaluation
): Generator<void, boolean> {
  if (!bringsNothingUp(before, after)) return false;
  const { job } = after;
  const others = (one: Job | undefined): string => JSON.stringify(one?.areas.filter(area => area.key !== key));
  const area = job?.areas.find(one => one.key === key);
  if (job === undefined || area === undefined || others(job) !== others(before.job)) return false;
  const now = (yield* cuttingAdvice(job, area, []))?.now;
  return now !== undefined && isSame(now, promise);
}

/** In metres: a length worked out in another order. */
const SAME = 1e-6;

function isSame(one: Cutting, other: Cutting): boolean {
  return (
    one.cutUnits === other.cutUnits &&
    one.slivers === other.slivers &&
    Math.abs(one.sawLength - other.sawLength) <= SAME &&
    Math.abs((one.narrowest ?? 0) - (other.narrowest ?? 0)) <= SAME
  );
}

function offer({ text, key }: AreaInText, title: string, edits: readonly TextChange[], promise: Cutting): Offer {
  return { title, edits, text: applyChanges(text.parsed.text, edits), area: key, promise };
}

function startOffers(inText: AreaInText, area: Area, { now, starts }: CuttingAdvice, system: System): Offer[] {
  const { shifted } = area.start;
  const said = shifted && { x: shifted.along.value, y: shifted.across.value };
  return starts.flatMap(({ change, cutting }) => {
    const edits = startEdits(inText, change, system);
    const title = `${changeTitle(change, said, system)}: ${savings(now, cutting, system)}`;
    return edits === undefined ? [] : [offer(inText, title, edits, cutting)];
  });
}

function inboardOffers(inText: AreaInText, { now, inboard }: CuttingAdvice, system: System): Offer[] {
  const gap = inText.gaps.get(`${inText.key}/inboard-cuts`);
  if (inboard === undefined || gap === undefined) return [];
  const least = lengthText(inboard.least, system);
  const title = `Cut two units where a course would end in less than ${least}: ${savings(now, inboard.cutting, system)}`;
  return [offer(inText, title, [written(gap, [`inboard-cuts ${least}`])], inboard.cutting)];
}

/** A size that hangs on names is left alone: the names may serve elsewhere. */
function sizeOffers(
  { text, project }: Look,
  outline: Statement,
  inText: AreaInText,
  { now, sizes }: CuttingAdvice,
  system: System
): Offer[] {
  if (sizes.length === 0) return [];
  const span = spanOf(text.parsed, outline.first, outline.end);
  const list = sumsIn(text, project).find(
    ({ holder, start }) => holder === 'Rectangle' && covers(span, { start, end: start })
  );
  if (list?.sums.length !== 2 || list.sums.some(hasNames) || onOneLine(text.parsed, list) === undefined) return [];
  const placer = Placer.of(text);
  return sizes.map(({ size, cutting }) => {
    const words = sizeText(size, system);
    const edit = placer.change({ start: list.start, end: list.end, text: words });
    return offer(inText, `Make it ${words}: ${savings(now, cutting, system)}`, [edit], cutting);
  });
}
