import type { Key } from '../../job/job.ts';
import type { Evaluation } from '../../paving.ts';
import type { Session } from '../../session/session.ts';
import { descriptionOf } from '../plan/counts.ts';
import { ofTheFinish } from '../plan/heights-from.ts';
import type { PlanInput, PlanUnit } from '../plan/plan-input.ts';
import { planOfJob } from '../plan/plan-of-job.ts';
import { missingText } from '../text/missing-text.ts';
import { areaPiece } from './area-piece.ts';
import { findingSigns } from './finding-signs.ts';
import { aroundAll } from './in-millimetres.ts';
import { laidShapes, type LaidShapes } from './laid-shapes.ts';
import { legendLines } from './legend-lines.ts';
import type { LivePlan, LiveShape, LiveThing } from './live-plan.ts';
import { levelAreas } from './level-areas.ts';
import { type LayerName, LAYERS, type Piece, type UnledThing } from './piece.ts';
import { placeKeyOf } from './place-of-thing.ts';
import { pointPieces } from './point-pieces.ts';
import { brokenPieces, inTheirPlaces, type ShownPiece } from './shown-before.ts';
import { sitePieces } from './site-pieces.ts';

/** Where pieces are remembered: units as they are drawn, and what was sound last. */
export interface PlanMemory {
  readonly session: Session;
  readonly scope: string;
}

/** Why a thing can't be dragged, in a sentence; undefined where it can. */
export type WhyNot = (thing: string) => string | undefined;

/**
 * The plan of a job for a screen, in steps. What is broken is shown as it was last, marked; undefined where there is no job.
 */
export function* livePlanOf(
  evaluation: Evaluation,
  { session, scope }: PlanMemory,
  whyNot?: WhyNot
): Generator<void, LivePlan | undefined> {
  const { job, numbers } = evaluation;
  if (job === undefined || numbers === undefined) return undefined;
  const before = (session.lastGood(scope, job.key) as readonly Piece[] | undefined) ?? [];
  const areas = new Set(job.areas.map(({ key }) => key));
  const missing = new Set(numbers.quantities.missing);
  const known = (key: Key): boolean => areas.has(key) && !missing.has(key);
  const brokenAreas = brokenPieces(
    evaluation,
    known,
    before.filter(({ from }) => from?.area !== undefined)
  );
  const besides = before.flatMap(({ key, from }) => (brokenAreas.has(key) && from?.area ? [from.area.outline] : []));
  const whole = planOfJob(job, numbers, besides);
  const input = { ...whole, areas: whole.areas.filter(({ key }) => !brokenAreas.has(key)) };
  yield;
  const fresh = yield* freshPieces(evaluation, input, { session, scope });
  const keys = new Set(fresh.map(({ key }) => key));
  const broken = brokenPieces(evaluation, key => keys.has(key), before);
  const shown = inTheirPlaces(fresh, before, broken);
  const sound = shown.filter(({ piece: { key } }) => !missing.has(key) || broken.has(key)).map(({ piece }) => piece);
  session.forgetOthers(scope, thing => thing === job.key || sound.some(({ key }) => key === thing));
  session.keepLastGood(scope, job.key, sound);
  yield;
  return assembled(evaluation, input, shown, whyNot);
}

function* freshPieces(evaluation: Evaluation, input: PlanInput, memory: PlanMemory): Generator<void, Piece[]> {
  const { job, numbers } = evaluation as Required<Pick<Evaluation, 'job' | 'numbers'>>;
  const { quantities } = numbers;
  const laidOf = new Map(numbers.laid.map(({ area, laid }) => [area.key, laid]));
  const level = levelAreas(job, input.site?.falls ?? []);
  const pieces: Piece[] = [];
  for (const plan of input.areas) {
    const area = job.areas.find(({ key }) => key === plan.key)!;
    const laid = laidOf.get(plan.key);
    const own = quantities.areas.find(({ id }) => id === plan.key);
    const evenly = level.get(plan.key);
    const units = unitsLaid(input.units, plan);
    const shapes = laid && (yield* laidOnce({ area: { key: plan.key }, plan, laid, units }, memory));
    pieces.push(
      areaPiece({
        area,
        plan,
        units,
        falls: input.site?.falls.filter(fall => fall.area === plan.key) ?? [],
        system: job.system,
        ...(own === undefined ? {} : { numbers: own }),
        ...(laid === undefined ? {} : { laid }),
        ...(shapes === undefined ? {} : { shapes }),
        ...(job.datum === undefined ? {} : { datum: job.datum }),
        ...(evenly === undefined ? {} : { level: evenly })
      })
    );
    yield;
  }
  return [...pieces, ...sitePieces(job, input, quantities), ...pointPieces(job, input, quantities, level)];
}

function unitsLaid(units: readonly PlanUnit[], { parts }: PlanInput['areas'][number]): PlanUnit[] {
  const laid = new Set(parts.flatMap(part => [...part.laid.wholes, ...part.laid.cuts].map(({ unit }) => unit)));
  return units.filter(({ key }) => laid.has(key));
}

interface ToLay {
  readonly area: { readonly key: Key };
  readonly plan: PlanInput['areas'][number];
  readonly laid: NonNullable<Evaluation['numbers']>['laid'][number]['laid'] & {};
  readonly units: readonly PlanUnit[];
}

/** Units and cuts of an area: worked out anew only where they lie otherwise. */
function laidOnce({ area, plan, laid, units }: ToLay, { session, scope }: PlanMemory): Generator<void, LaidShapes> {
  const parts = plan.parts.map(({ key, kind }) => ({ key, kind }));
  const inputs = { area, parts, laid: laid.laid, cuts: laid.cuts, units };
  return session.recall({ scope, stage: 'plan', thing: area.key }, inputs, (before: LaidShapes | undefined) =>
    laidShapes(inputs, before)
  );
}

// ---- all together ----

function assembled(
  evaluation: Evaluation,
  input: PlanInput,
  pieces: readonly ShownPiece[],
  whyNot: WhyNot | undefined
): LivePlan {
  const job = evaluation.job!;
  const drawn = LAYERS.flatMap(layer => pieces.flatMap(piece => shapesIn(piece, layer)));
  const things = uniqueBy(pieces.flatMap(piece => thingsIn(piece, whyNot)));
  const byKey = new Map(things.map(thing => [thing.key, thing]));
  const whole = aroundAll(things.map(({ bounds }) => bounds));
  const shapes = lengthsOnce(uniqueBy(drawn).filter(({ thing }) => byKey.has(thing)));
  const file = evaluation.texts[0]!.file;
  const signs = findingSigns(evaluation.findings, file, { things: byKey, shapes: labelsFirst(shapes), whole });
  const all = shownInput(input, pieces);
  const lead = (thing: UnledThing): LiveThing => ({ ...thing, leads: leads(evaluation, thing.key) });
  return {
    title: input.title,
    description: [descriptionOf(all), ...(all.site?.heights === undefined ? [] : [ofTheFinish(all.site.heights)])].join(
      ' '
    ),
    system: job.system,
    notes: notesOf(evaluation, pieces),
    shapes: [...shapes, ...signs.shapes],
    things: [...things, ...signs.things].map(lead),
    legend: legendLines(all, signs.severities),
    sections: [...job.sections, ...job.lines].map(({ key, name }) => ({ key, name }))
  };
}

function leads(evaluation: Evaluation, key: string): boolean {
  return key.startsWith('finding:') || placeKeyOf(evaluation, key) !== undefined;
}

/** A sign stands where the thing has its text, before its other marks. */
function labelsFirst(shapes: readonly LiveShape[]): LiveShape[] {
  const isText = ({ kind }: LiveShape): boolean => kind === 'text';
  return [...shapes.filter(isText), ...shapes.filter(shape => !isText(shape))];
}

function shapesIn({ piece, before }: ShownPiece, layer: LayerName): readonly LiveShape[] {
  const shapes = piece.layers[layer] ?? [];
  return before === undefined ? shapes : shapes.map(shape => ({ ...shape, stale: true }));
}

function thingsIn({ piece: { things }, before }: ShownPiece, whyNot: WhyNot | undefined): UnledThing[] {
  if (before === undefined) return things.map(thing => withReason(thing, thing.handle && whyNot?.(thing.key)));
  return things.map(thing => ({
    ...withReason(thing, `It is shown as it was before ${before}. Mend that first.`),
    facts: [['Shown as it was before', before], ...thing.facts],
    stale: true
  }));
}

function withReason(thing: UnledThing, why: string | undefined): UnledThing {
  return thing.handle === undefined || why === undefined ? thing : { ...thing, handle: { ...thing.handle, why } };
}

/** What two things bring in common, as a soft spot that reaches over two areas, is drawn once. */
function uniqueBy<T extends { readonly key: string }>(items: readonly T[]): T[] {
  const first = new Map<string, T>();
  for (const item of items) if (!first.has(item.key)) first.set(item.key, item);
  return [...first.values()];
}

/** The length of a side that two areas share is told once, by the one that it matters most to. */
function lengthsOnce(shapes: readonly LiveShape[]): LiveShape[] {
  const placeOf = (shape: LiveShape): string | undefined =>
    shape.kind === 'text' && shape.content === 'dimensions'
      ? `${shape.text} at ${Math.round(shape.x)} ${Math.round(shape.y)}`
      : undefined;
  const best = new Map<string, LiveShape>();
  for (const shape of shapes) {
    const place = placeOf(shape);
    if (place === undefined) continue;
    const other = best.get(place);
    if (other === undefined || rankOf(shape) < rankOf(other)) best.set(place, shape);
  }
  return shapes.filter(shape => {
    const place = placeOf(shape);
    return place === undefined || best.get(place) === shape;
  });
}

function rankOf(shape: LiveShape): number {
  return shape.kind === 'text' ? shape.rank : 0;
}

/** What is seen, broken things included as they were. */
function shownInput(input: PlanInput, pieces: readonly ShownPiece[]): PlanInput {
  const old = pieces.flatMap(({ piece: { from }, before }) => (before === undefined || !from ? [] : [from]));
  const { site } = input;
  return {
    ...input,
    areas: [...input.areas, ...old.flatMap(({ area }) => area ?? [])],
    units: uniqueBy([...input.units, ...old.flatMap(({ units }) => units ?? [])]),
    missing: [],
    ...(site === undefined
      ? {}
      : {
          site: {
            ...site,
            falls: [...site.falls, ...old.flatMap(({ falls }) => falls ?? [])],
            things: [...site.things, ...old.flatMap(({ things }) => things ?? [])]
          }
        })
  };
}

/** What is shown as it was before each error, and what can't be shown at all. */
function notesOf({ job, numbers }: Evaluation, pieces: readonly ShownPiece[]): string[] {
  const old = new Map<string, string[]>();
  const broken = new Set(pieces.flatMap(({ piece, before }) => (before === undefined ? [] : [piece.key])));
  for (const { piece, before } of pieces) {
    // What lies in a broken area is not named beside it.
    if (before === undefined || piece.with?.some(area => broken.has(area))) continue;
    old.set(before, [...(old.get(before) ?? []), piece.name]);
  }
  const shown = new Set(pieces.map(({ piece }) => piece.key));
  const missing = numbers!.quantities.missing.filter(key => !shown.has(key) && !/[/+]/.test(key));
  return [
    ...[...old].map(
      ([before, names]) => `${names.join(', ')} as ${names.length === 1 ? 'it was' : 'they were'} before ${before}`
    ),
    ...missingText(missing, job!.missing).map(text => `not shown: ${text}`)
  ];
}
