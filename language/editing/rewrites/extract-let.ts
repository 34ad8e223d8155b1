import { sumsIn, type SumList, type WrittenSum } from '../../lowering/sums.ts';
import type { Look } from '../../paving.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import type { Span } from '../../syntax/text-edit.ts';
import { FreeNames } from './names.ts';
import { isBroken, linesBefore, topStatementAt } from './places.ts';
import { covers, rewrite, touches, type Edit, type Rewrite } from './rewrite.ts';
import { isNought, isWholeLet, standingAlone, withParts } from './written.ts';

/** A sum in the list that it stands in. */
interface Found {
  readonly list: SumList;
  readonly sum: WrittenSum;
}

/** The quantity at the cursor, or the sum that is selected, under a name of its own; also wherever else it says the same. */
export function extractLet({ text, project }: Look, at: Span): Rewrite[] {
  const { parsed } = text;
  const all = sumsIn(text, project).flatMap(list => list.sums.flatMap(withParts).map((sum): Found => ({ list, sum })));
  const found = at.start < at.end ? selected(parsed, all, at) : atCursor(all, at);
  if (found === undefined) return [];
  const statement = topStatementAt(parsed, found.sum.start);
  const value = standingAlone(parsed, found.sum);
  if (statement === undefined || value === undefined || isBroken(parsed, statement)) return [];
  const name = new FreeNames(project).like(nameFor(found));
  const declaration = linesBefore(text, statement, [`let ${name} = ${value}`], 'let '.length);
  const made = (title: string, places: readonly Found[]): Rewrite[] => {
    const edits = named(parsed, places, name);
    return edits === undefined
      ? []
      : [rewrite(text, { title, kind: 'extract', keeps: { within: 0 } }, [declaration, ...edits])];
  };
  const title = `Name ${value} with let`;
  const others = all.filter(other => other.sum !== found.sum && saysTheSame(parsed, other, found));
  const places = others.length === 1 ? 'one other place that says' : `${others.length} other places that say`;
  const everywhere = others.length === 0 ? [] : made(`${title}, here and in ${places} the same`, [found, ...others]);
  return [...made(title, [found]), ...everywhere];
}

function atCursor(all: readonly Found[], at: Span): Found | undefined {
  return all.find(
    ({ list, sum }) =>
      touches(sum, at) &&
      (sum.form === 'quantity' || (sum.form === 'brackets' && sum.measure !== undefined)) &&
      mayBeNamed(list, sum) &&
      sum.amount?.measure !== '' &&
      !isNought(sum)
  );
}

function selected({ text }: ParsedText, all: readonly Found[], at: Span): Found | undefined {
  const written = text.slice(at.start, at.end);
  const start = at.start + written.length - written.trimStart().length;
  const end = start + written.trim().length;
  return all.find(({ list, sum }) => sum.start === start && sum.end === end && mayBeNamed(list, sum));
}

function mayBeNamed(list: SumList, sum: WrittenSum): boolean {
  return sum.amount !== undefined && sum.form !== 'name' && !isWholeLet(list, sum);
}

function saysTheSame({ text }: ParsedText, { list, sum }: Found, one: Found): boolean {
  return (
    mayBeNamed(list, sum) &&
    sum.form === one.sum.form &&
    !covers(sum, one.sum) &&
    !covers(one.sum, sum) &&
    sum.amount!.measure === one.sum.amount!.measure &&
    sum.amount!.value.equals(one.sum.amount!.value) &&
    spaced(text, sum) === spaced(text, one.sum)
  );
}

function spaced(text: string, { start, end }: Span): string {
  return text.slice(start, end).replace(/\s+/g, ' ');
}

/** Behind `finish` a name would be that of a corner. */
function isHeightFirst({ text }: ParsedText, { start }: Span): boolean {
  return /\bfinish\s+$/.test(text.slice(Math.max(0, start - 80), start));
}

/** The name in the place of each sum; undefined where what stands beside one can't be written without it. */
function named(parsed: ParsedText, places: readonly Found[], name: string): Edit[] | undefined {
  if (places.some(({ sum }) => isHeightFirst(parsed, sum))) return undefined;
  const { text } = parsed;
  const edits = places.map(({ sum }): Edit => ({ start: sum.start, end: sum.end, text: name }));
  const byList = new Map<SumList, WrittenSum[]>();
  for (const { list, sum } of places) byList.set(list, [...(byList.get(list) ?? []), sum]);
  for (const [list, gone] of byList) {
    const measures = measuresOfTheirOwn(text, list, gone);
    if (measures === undefined) return undefined;
    edits.push(...measures);
  }
  return edits;
}

/**
 * Numbers of a list that need a measure of their own: the one that gave it to them has a name now, or the sign of a size
 * would stand between a number and a name.
 */
function measuresOfTheirOwn(text: string, list: SumList, gone: readonly WrittenSum[]): Edit[] | undefined {
  if (list.form === 'alone') return [];
  const last = list.sums.at(-1)!;
  const isBehindBrackets = list.form === 'pair' && text[list.end - 1] !== ')';
  const measureGone = !isBehindBrackets && gone.some(({ end }) => end === last.end);
  const edits: Edit[] = [];
  for (const [index, sum] of list.sums.entries()) {
    const next = list.sums[index + 1];
    if (!measureGone && !(list.form === 'size' && next !== undefined && gone.includes(next))) continue;
    for (const part of withParts(sum)) {
      const takesItself = part.given !== undefined && part.inside.every(({ given }) => given === undefined);
      if (!takesItself || gone.some(each => covers(each, part)) || isNought(part)) continue;
      if (part.form !== 'quantity') return undefined;
      edits.push({ start: part.end, end: part.end, text: ` ${part.given!}` });
    }
  }
  return edits;
}

function nameFor({ list: { holder, says, sums }, sum }: Found): string {
  const names = NAMES[`${holder} ${says}`] ?? (holder === 'Let' ? undefined : PLACES[says]);
  const at = sums.findIndex(each => covers(each, sum));
  if (sums[at] === sum) return names?.[at] ?? BY_MEASURE[sum.amount!.measure] ?? 'value';
  return BY_MEASURE[sum.amount!.measure] ?? 'value';
}

/** What a quantity is called by the place that it stands in. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  'Rectangle size': ['side-length', 'side-depth'],
  'SizeItem size': ['unit-length', 'unit-width', 'unit-thickness'],
  'Circle across': ['circle-width'],
  'Circle radius': ['circle-radius'],
  'Step length': ['leg-length'],
  'Rounding radius': ['corner-radius'],
  'Layer thickness': ['layer-thickness'],
  'LayerClause past': ['past-edging'],
  'LayerClause settles': ['bed-settles'],
  'StripWidth width': ['path-width'],
  'Fall rate': ['fall'],
  'Joints joint': ['joint-width'],
  'Joints least': ['least-joint'],
  'Joints most': ['widest-joint'],
  'Band at': ['band-place'],
  'SiteTopsoil thickness': ['topsoil-depth'],
  'Height by': ['height'],
  'Benchmark height': ['height']
};

const PLACES: Readonly<Record<string, readonly string[]>> = {
  at: ['right-by', 'up-by'],
  start: ['right-by', 'up-by'],
  corner: ['right-by', 'up-by'],
  centre: ['right-by', 'up-by']
};

const BY_MEASURE: Readonly<Record<string, string>> = { m: 'length', degrees: 'angle', kg: 'mass' };
