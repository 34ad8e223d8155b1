import type { Frame } from '../geometry/index.ts';
import type { AreaToLay, FieldToLay } from './area-to-lay.ts';
import type { TooManyUnits } from './laid.ts';
import { unitsAbout } from './lay-pattern.ts';
import { type Ground, type LaidField, layField, setOut, type SetOut } from './lay-field.ts';

/** What is laid in one part of an area: `field`, an inset, a border or band by its key. */
export interface LaidPart extends LaidField {
  readonly part: string;
  /** Keys of the units it is laid with. */
  readonly units: readonly string[];
}

export interface LaidArea {
  readonly parts: readonly LaidPart[];
}

/** Areas may carry on from each other this deep; more is a circle, and the last begins as if it stood alone. */
const MOST_CARRIED_ON = 20;

/** Lays all of an area: borders and bands first, the field inside them, insets in their own way. */
export function* layArea(area: AreaToLay): Generator<void, LaidArea | TooManyUnits> {
  const parts: LaidPart[] = [];
  const { ground, setOut: how } = setOutField(area);
  const field = yield* layField(ground, how);
  if ('tooMany' in field) return field;
  parts.push({ part: 'field', units: keysOf(area.field), ...field });
  for (const inset of area.insets) {
    const within: Ground = { outline: inset.outline, reach: [], region: { outer: inset.outline, holes: [] } };
    const laid = yield* layField(within, setOut(within, inset.field, undefined));
    if ('tooMany' in laid) return laid;
    parts.push({ part: inset.key, units: keysOf(inset.field), ...laid });
  }
  return { parts };
}

function keysOf({ units }: FieldToLay): string[] {
  return units.map(({ key }) => key);
}

/** What borders, bands, boxes and insets leave for the field. */
function fieldGround({ outline, keptOut, insets }: AreaToLay): { readonly ground: Ground } {
  const holes = [...keptOut, ...insets].map(shape => shape.outline);
  return { ground: { outline, reach: [], region: { outer: outline, holes } } };
}

/** The frame of the field that an area's joint lines go on from. */
function carriedOn({ field: { carriedOnFrom } }: AreaToLay, deep: number): Frame | undefined {
  if (carriedOnFrom === undefined || deep > MOST_CARRIED_ON) return undefined;
  const { ground } = fieldGround(carriedOnFrom);
  return setOut(ground, carriedOnFrom.field, carriedOn(carriedOnFrom, deep + 1)).frame;
}

/** About how many units an area takes, without laying them. */
export function unitsAboutIn(area: AreaToLay): number {
  const { ground, setOut: how } = setOutField(area);
  return unitsAbout(ground.region, how.pattern);
}

/** Where the field of an area lies and how it is set out, before anything is laid. */
export function setOutField(area: AreaToLay): { readonly ground: Ground; readonly setOut: SetOut } {
  const { ground } = fieldGround(area);
  return { ground, setOut: setOut(ground, area.field, carriedOn(area, 0)) };
}
