import type { System } from '../../job/job.ts';
import type { WrittenPair } from '../../lowering/handles/told-handle.ts';
import type { WrittenNumber } from '../../lowering/handles/written-number.ts';
import { measureNamed } from '../../measures/measures.ts';
import type { TextEdit } from '../../syntax/text-edit.ts';
import { type NumberStyle, spaceBefore, styleOf, usualStyle } from './number-style.ts';
import { type Anew, stepOfStyle, writtenAnew } from './written-anew.ts';

/** Edits that lead to other numbers, and how far each may lie from what was asked, SI. */
export interface Edits {
  readonly edits: readonly TextEdit[];
  readonly within: readonly number[];
}

/** Edits of numbers that stand by themselves; one that says nothing of its style is written as the other is. */
export function numberEdits(
  numbers: readonly { readonly number: WrittenNumber; readonly to: number }[],
  system: System
): Edits {
  const known = numbers.flatMap(({ number }) => styleOf(number) ?? [])[0];
  const made = numbers.map(({ number, to }) => {
    const style = styleOf(number) ?? alone(known ?? usualStyle(system));
    const anew = writtenAnew(number, style, to);
    return { edits: anew === undefined ? [] : [over(number, anew.text)], within: stepOfStyle(style).valueOf() / 2 };
  });
  return { edits: made.flatMap(({ edits }) => edits), within: made.map(({ within }) => within) };
}

/** Edits of two numbers in brackets, which may share a measure. */
export function pairEdits(
  source: string,
  { x, y, behind }: WrittenPair,
  to: readonly [number, number],
  system: System
): Edits {
  const styles = pairStyles(x, y, system);
  const made = [x, y].map((number, at) => writtenAnew(number, styles[at]!, to[at]!));
  const within = styles.map(style => stepOfStyle(style).valueOf() / 2);
  const numbers = [x, y].map((number, at) => nowOf(source, number, made[at])) as [Now, Now];
  return { edits: withMeasures(source, numbers, { x, y, behind }), within };
}

/** A number as it will stand there. */
interface Now {
  readonly number: WrittenNumber;
  readonly text: string;
  readonly isNought: boolean;
  readonly bare: boolean;
  readonly measure?: string;
}

function nowOf(source: string, number: WrittenNumber, anew: Anew | undefined): Now {
  if (anew !== undefined) return { number, ...anew, isNought: anew.value.equals(0) };
  const measure = number.parts.at(-1)!.measure;
  return {
    number,
    text: source.slice(number.start, number.end),
    isNought: number.value.equals(0),
    bare: measure === undefined,
    ...(measure === undefined ? {} : { measure })
  };
}

/** The numbers with a measure each, where they can no longer share one. */
function withMeasures(source: string, [x, y]: readonly [Now, Now], { behind }: WrittenPair): TextEdit[] {
  const list = x.number.given ?? y.number.given;
  const said = source.slice(behind.start, behind.end);
  const relies = (one: Now): boolean => one.bare && !one.isNought;
  const own = (one: Now): Now =>
    relies(one) && list !== undefined ? { ...one, text: one.text + spaceBefore(list) + list } : one;
  if (list === undefined) {
    // Nothing had a measure: what is bare now takes one for both.
    const measure = relies(x) || relies(y) ? ' m' : '';
    return [...changed(source, x), ...changed(source, y), ...inserted(behind.end, measure)];
  }
  if (said !== '') {
    const isApart = [x, y].some(one => !one.bare && one.number.given !== undefined);
    if (!isApart) return [...changed(source, x), ...changed(source, y)];
    return [...changed(source, own(x)), ...changed(source, own(y)), { ...behind, text: '' }];
  }
  const isShared = y.measure !== undefined && measureNamed(y.measure)?.factor.equals(measureNamed(list)?.factor ?? 0);
  return [...changed(source, isShared ? x : own(x)), ...changed(source, y)];
}

function changed(source: string, { number, text }: Now): TextEdit[] {
  return text === source.slice(number.start, number.end) ? [] : [over(number, text)];
}

function inserted(at: number, text: string): TextEdit[] {
  return text === '' ? [] : [{ start: at, end: at, text }];
}

export function over({ start, end }: WrittenNumber, text: string): TextEdit {
  return { start, end, text };
}

/** A nought says little of its style: it is written as the number beside it. */
function pairStyles(x: WrittenNumber, y: WrittenNumber, system: System): readonly [NumberStyle, NumberStyle] {
  const [first, second] = [saidStyle(x), saidStyle(y)];
  const usual = usualStyle(system);
  const both = first ?? second;
  if (both === undefined) {
    const style = styleOf(x) ?? styleOf(y) ?? (usual.form === 'decimal' ? { ...usual, bare: true } : usual);
    return [styleOf(x) ?? style, styleOf(y) ?? style];
  }
  return [first ?? beside(x, both), second ?? beside(y, both)];
}

/** The style of a number that is more than a bare nought. */
function saidStyle(number: WrittenNumber): NumberStyle | undefined {
  const isBareNought = number.value.equals(0) && number.parts.every(({ measure }) => measure === undefined);
  return isBareNought ? undefined : styleOf(number);
}

/** The style of a bare nought beside a number: of its measure, where the two share one. */
function beside(nought: WrittenNumber, other: NumberStyle): NumberStyle {
  const isShared = nought.given !== undefined && isAlone(other);
  return isShared ? { ...other, bare: true } : alone(other);
}

function isAlone(style: NumberStyle): boolean {
  return style.form === 'tape' ? style.one !== undefined : style.measures.length === 1;
}

function alone(style: NumberStyle): NumberStyle {
  return { ...style, bare: false };
}
