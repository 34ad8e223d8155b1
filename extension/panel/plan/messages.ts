// What the editor's client and the live plan say to each other, and the check of it on either side.
import {
  type Guard,
  isAbsentOr,
  isCount,
  isDrawn,
  isFlag,
  isList,
  isNumber,
  isPlain,
  isString,
  type Plain
} from '../checks.ts';
import type { DrawnElement } from '../../../server/protocol.ts';
import type {
  Content,
  ListPatch,
  LiveLegendLine,
  LiveMark,
  LivePlan,
  LiveShape,
  LiveThing,
  PlanPatch,
  SectionLine
} from '../../../server/plan-protocol.ts';
import { WORDS } from './words.ts';

/** The panel's own words, in the language of the editor, by name. */
export type PlanWords = Readonly<Record<(typeof WORDS)[number], string>>;

export type ToPlan =
  /** A plan as a whole; `about` is the address of the job's text. */
  | {
      readonly kind: 'plan';
      readonly about: string;
      readonly number: number;
      readonly words: PlanWords;
      readonly plan: LivePlan;
    }
  /** What differs from the plan of that number; a panel that has another one asks anew with `ready`. */
  | { readonly kind: 'patch'; readonly number: number; readonly since: number; readonly patch: PlanPatch }
  /** Nothing can be shown, or not any more: what was shown stays, dimmed. */
  | { readonly kind: 'problem'; readonly about: string; readonly words: PlanWords; readonly problem: string }
  /** The cursor stands in these things, the innermost first: they are outlined, and nothing scrolls. */
  | { readonly kind: 'at-cursor'; readonly things: readonly string[] }
  | { readonly kind: 'section'; readonly drawing: DrawnElement; readonly text: string }
  | { readonly kind: 'no-section'; readonly problem: string }
  /** What was dragged stays where it was. */
  | { readonly kind: 'not-dragged'; readonly problem: string };

export type FromPlan =
  /** The page has begun, or needs the plan as a whole. */
  | { readonly kind: 'ready' }
  /** Go to its place in the text. */
  | { readonly kind: 'open'; readonly thing: string }
  /** What is selected in the plan is marked in the text, which doesn't scroll; nothing is where it is empty. */
  | { readonly kind: 'select'; readonly thing: string }
  | { readonly kind: 'drag'; readonly thing: string; readonly to: readonly [number, number] }
  | { readonly kind: 'section'; readonly along: SectionLine };

/** What the page keeps, so that it comes back as it was after the window is opened again. */
export interface PlanState {
  readonly about: string;
  /** The middle of what is seen, mm on the ground; absent where all of it is to be seen. */
  readonly view?: { readonly x: number; readonly y: number; readonly pixelsPerMetre: number };
  /** Radians by which the plan is turned. */
  readonly turn: number;
  readonly hidden: readonly Content[];
  readonly selected: string;
}

/** In the order in which they are offered; a record, so that none is forgotten. */
const CONTENTS: Readonly<Record<Content, true>> = {
  units: true,
  cuts: true,
  'cut-numbers': true,
  edges: true,
  'kept-out': true,
  points: true,
  dimensions: true,
  heights: true,
  falls: true,
  starts: true,
  things: true,
  findings: true,
  names: true
};

export const contents = Object.keys(CONTENTS) as readonly Content[];

const SIGNS: Readonly<Record<LiveMark['sign'], true>> = {
  point: true,
  dot: true,
  diamond: true,
  fall: true,
  start: true,
  centre: true,
  error: true,
  warning: true,
  note: true
};

// ---- checks ----

export function isToPlan(value: unknown): value is ToPlan {
  if (!isPlain(value)) return false;
  switch (value['kind']) {
    case 'plan':
      return (
        isString(value['about']) && isCount(value['number']) && isWords(value['words']) && isLivePlan(value['plan'])
      );
    case 'patch':
      return isCount(value['number']) && isCount(value['since']) && isPatch(value['patch']);
    case 'problem':
      return isString(value['about']) && isWords(value['words']) && isString(value['problem']);
    case 'at-cursor':
      return isList(value['things'], isString);
    case 'section':
      return isDrawn(value['drawing']) && isString(value['text']);
    case 'no-section':
    case 'not-dragged':
      return isString(value['problem']);
    default:
      return false;
  }
}

export function isFromPlan(value: unknown): value is FromPlan {
  if (!isPlain(value)) return false;
  switch (value['kind']) {
    case 'ready':
      return true;
    case 'open':
    case 'select':
      return isString(value['thing']);
    case 'drag':
      return isString(value['thing']) && isPair(value['to']);
    case 'section':
      return isLine(value['along']);
    default:
      return false;
  }
}

export function isPlanState(value: unknown): value is PlanState {
  return (
    isPlain(value) &&
    isString(value['about']) &&
    isAbsentOr(value['view'], isKeptView) &&
    isNumber(value['turn']) &&
    isList(value['hidden'], isContent) &&
    isString(value['selected'])
  );
}

function isKeptView(value: unknown): value is NonNullable<PlanState['view']> {
  return isPlain(value) && isNumber(value['x']) && isNumber(value['y']) && isPositive(value['pixelsPerMetre']);
}

const isPositive = (value: unknown): value is number => isNumber(value) && value > 0;

function isContent(value: unknown): value is Content {
  return isString(value) && Object.hasOwn(CONTENTS, value);
}

function isSign(value: unknown): value is LiveMark['sign'] {
  return isString(value) && Object.hasOwn(SIGNS, value);
}

const isTrue = (value: unknown): value is true => value === true;

function isPair(value: unknown): value is readonly [number, number] {
  return isList(value, isNumber) && value.length === 2;
}

function isPairOfWords(value: unknown): value is readonly [string, string] {
  return isList(value, isString) && value.length === 2;
}

function isLine(value: unknown): value is SectionLine {
  return isPlain(value) && (isString(value['key']) || (isPair(value['from']) && isPair(value['to'])));
}

function isWords(value: unknown): value is PlanWords {
  return isPlain(value) && WORDS.every(word => isString(value[word]));
}

function isLivePlan(value: unknown): value is LivePlan {
  return (
    isPlain(value) &&
    isString(value['title']) &&
    isString(value['description']) &&
    isSystem(value['system']) &&
    isList(value['notes'], isString) &&
    isList(value['shapes'], isShape) &&
    isList(value['things'], isThing) &&
    isList(value['legend'], isLegendLine) &&
    isList(value['sections'], isNamedSection)
  );
}

function isPatch(value: unknown): value is PlanPatch {
  return (
    isPlain(value) &&
    isAbsentOr(value['title'], isString) &&
    isAbsentOr(value['description'], isString) &&
    isAbsentOr(value['system'], isSystem) &&
    isAbsentOr(value['notes'], (notes): notes is readonly string[] => isList(notes, isString)) &&
    isAbsentOr(value['shapes'], patchOf(isShape)) &&
    isAbsentOr(value['things'], patchOf(isThing)) &&
    isAbsentOr(value['legend'], patchOf(isLegendLine)) &&
    isAbsentOr(value['sections'], (all): all is LivePlan['sections'] => isList(all, isNamedSection))
  );
}

function patchOf<T>(isItem: Guard<T>): Guard<ListPatch<T>> {
  const isPut = (value: unknown): value is ListPatch<T>['put'][number] =>
    isPlain(value) && isItem(value['item']) && isAbsentOr(value['before'], isString);
  return (value): value is ListPatch<T> =>
    isPlain(value) &&
    isList(value['gone'], isString) &&
    isAbsentOr(value['set'], isListOfSet) &&
    isList(value['put'], isPut);
}

/** What the fields make of an item is told once they are set: `isSoundAfter`. */
function isListOfSet(value: unknown): value is NonNullable<ListPatch<LiveShape>['set']> {
  return isList(value, (one): one is { key: string; fields: Plain } => {
    return isPlain(one) && isString(one['key']) && isPlain(one['fields']);
  });
}

/** Whether the items of a plan whose fields a patch has set are what they should be. */
export function isSoundAfter(plan: LivePlan, { shapes, things, legend }: PlanPatch): boolean {
  const isSound = (
    items: readonly { key: string }[],
    patch: Pick<ListPatch<never>, 'set'> | undefined,
    isItem: (value: unknown) => boolean
  ) => {
    const keys = new Set(patch?.set?.map(({ key }) => key));
    return keys.size === 0 || items.every(item => !keys.has(item.key) || isItem(item));
  };
  return (
    isSound(plan.shapes, shapes, isShape) &&
    isSound(plan.things, things, isThing) &&
    isSound(plan.legend, legend, isLegendLine)
  );
}

function isSystem(value: unknown): value is LivePlan['system'] {
  return value === 'metric' || value === 'imperial';
}

function isNamedSection(value: unknown): value is LivePlan['sections'][number] {
  return isPlain(value) && isString(value['key']) && isString(value['name']);
}

function isShape(value: unknown): value is LiveShape {
  if (!isPlain(value) || !isKeyed(value)) return false;
  switch (value['kind']) {
    case 'path':
      return isList(value['loops'], isCorners) && isFlag(value['closed']) && isAbsentOr(value['numbered'], isRoom);
    case 'rows':
      return isCorners(value['form']) && isList(value['runs'], isRun) && isAbsentOr(value['numbered'], isRoom);
    case 'text':
      return (
        isPlaced(value) &&
        isString(value['text']) &&
        isNumber(value['turn']) &&
        ['start', 'middle', 'end'].includes(value['anchor'] as string) &&
        isAbsentOr(value['room'], isNumber) &&
        isNumber(value['rank'])
      );
    case 'mark':
      return isPlaced(value) && isSign(value['sign']) && isAbsentOr(value['turn'], isNumber);
    default:
      return false;
  }
}

function isKeyed(value: Plain): boolean {
  return (
    isString(value['key']) &&
    isContent(value['content']) &&
    isString(value['ink']) &&
    isAbsentOr(value['tint'], isString) &&
    isString(value['thing']) &&
    isAbsentOr(value['stale'], isTrue)
  );
}

function isCorners(value: unknown): value is readonly number[] {
  return isList(value, isNumber) && value.length % 3 === 0;
}

function isRun(value: unknown): value is readonly [number, number, number, number, number, number] {
  return isList(value, isNumber) && value.length === 6 && isCount(value[5]);
}

function isPlaced(value: Plain): boolean {
  return isNumber(value['x']) && isNumber(value['y']);
}

function isRoom(value: unknown): value is { x: number; y: number; size: number; turn: number } {
  return isPlain(value) && isPlaced(value) && isNumber(value['size']) && isNumber(value['turn']);
}

function isThing(value: unknown): value is LiveThing {
  return (
    isPlain(value) &&
    isString(value['key']) &&
    isString(value['kind']) &&
    isString(value['name']) &&
    isAbsentOr(value['number'], isString) &&
    isList(value['facts'], isPairOfWords) &&
    isList(value['bounds'], isNumber) &&
    value['bounds'].length === 4 &&
    isFlag(value['leads']) &&
    isAbsentOr(value['area'], isString) &&
    isAbsentOr(value['handle'], isHandle) &&
    isAbsentOr(value['stale'], isTrue)
  );
}

function isHandle(value: unknown): value is NonNullable<LiveThing['handle']> {
  return isPlain(value) && isPlaced(value) && isAbsentOr(value['why'], isString);
}

function isLegendLine(value: unknown): value is LiveLegendLine {
  return (
    isPlain(value) &&
    isString(value['key']) &&
    isLegendSign(value['sign']) &&
    isString(value['text']) &&
    isAbsentOr(value['strong'], isTrue) &&
    isAbsentOr(value['content'], isContent)
  );
}

function isLegendSign(value: unknown): value is LiveLegendLine['sign'] {
  if (!isPlain(value)) return false;
  if (isString(value['ink'])) return isAbsentOr(value['tint'], isString);
  return isString(value['line']) || isSign(value['mark']) || value['none'] === true;
}
