import type { Place } from '../findings/finding.ts';
import type { Job, Key, System } from '../job/job.ts';
import type { Evaluation } from '../paving.ts';
import { quantitiesOf, type Owner } from '../quantities/catalogue.ts';
import type { AreaQuantities, EdgeQuantities } from '../quantities/contract.ts';
import { acceptedMarkdown } from './accepted-hover.ts';
import { errorBehind } from './error-behind.ts';
import { markdownText } from './markdown.ts';
import { rowsOf, type Row } from './rows.ts';
import { siteThingAt } from './site-hover.ts';
import { HEADLINE, rowsMarkdown, unitsMarkdown } from './units-markdown.ts';
import { workingLine } from './working-line.ts';

export interface Hover {
  readonly place: Place;
  readonly markdown: string;
}

/**
 * What the numbers say of the thing at a place (1-based): headline, small table, one line of working; of an `accept` what
 * it sets aside.
 */
export function numbersAt(evaluation: Evaluation, file: string, line: number, column: number): Hover | undefined {
  const { job, numbers } = evaluation;
  if (job === undefined || numbers === undefined) return undefined;
  for (const [key, place] of placesAt(evaluation, file, line, column)) {
    const thing = thingOf(evaluation, key);
    if (thing !== undefined) return { place, markdown: told(thing, key, place, evaluation) };
    const setAside = acceptedMarkdown(evaluation, key);
    if (setAside !== undefined) return { place, markdown: setAside };
    const before = numbers.lastGood.find(({ id }) => id === key);
    if (before !== undefined) return { place, markdown: asBefore(before, evaluation, job.system) };
  }
  return undefined;
}

/** A thing by itself; of an area the dig too; of several sides that one line names each side, and all together. */
function told(thing: Thing, key: Key, place: Place, evaluation: Evaluation): string {
  const { system } = evaluation.job!;
  const sides = thing.owner === 'edge' ? sidesAt(evaluation, key, place) : [];
  if (sides.length > 1) return sidesTogether(sides, thing, evaluation);
  const own = markdown(thing, evaluation, system);
  const dig = thing.owner === 'area' ? thingOf(evaluation, `${key.split('/')[0]!}/finish`) : undefined;
  return dig === undefined ? own : `${own}\n\n${markdown(dig, evaluation, system)}`;
}

/** The sides of an area that stand at one place of the text. */
function sidesAt({ numbers, places }: Evaluation, key: Key, place: Place): readonly EdgeQuantities[] {
  const area = numbers!.quantities.areas.find(({ id }) => key.startsWith(`${id}/`))!;
  const there = JSON.stringify(place);
  return area.edges.filter(({ name }) => JSON.stringify(places.get(`${area.id}/edges/${name}`)) === there);
}

function sidesTogether(sides: readonly EdgeQuantities[], thing: Thing, evaluation: Evaluation): string {
  const { system } = evaluation.job!;
  const row = (words: string, length: number): Row => ({ ...rowsOf('edge', { length }, system)[0]!, words });
  const together = sides.reduce((sum, { length }) => sum + length, 0);
  const rows = [...sides.map(({ name, length }) => row(name, length)), row('Together', together)];
  const headline = thing.headline
    .replace(/^.* of (?=[^ ]+(?:,|$))/, `${sides.length} sides of `)
    .replace(', meets ', ', meeting ');
  return `**${markdownText(headline)}**\n\n${table(rows)}`;
}

/** The last good numbers of an area whose text is broken: marked so, and without a working, for nothing stands behind it now. */
function asBefore(area: AreaQuantities, evaluation: Evaluation, system: System): string {
  const error = errorBehind(evaluation, area.id);
  const line = error === undefined ? 'the error' : `the error in line ${error.line}`;
  const rows = [...rowsOf('area', area, system), ...rowsOf('dig', area.dig, system)];
  return `**${markdownText(area.name)}**, before ${line}\n\n${table(rows)}`;
}

export interface Thing {
  readonly headline: string;
  readonly owner: Owner;
  readonly numbers: object;
  /** JSON pointer of the numbers, starting at the job. */
  readonly pointer: string;
  readonly isBed?: boolean;
  /** The number whose working is shown. */
  readonly leading?: string;
  /** Tables of what lies in it. */
  readonly tables?: readonly string[];
}

/** Keys whose place holds the position, the smallest first. */
export function placesAt(evaluation: Evaluation, file: string, line: number, column: number): [Key, Place][] {
  const size = (place: Place): number => (place.endLine - place.line) * 10_000 + place.endColumn - place.column;
  return [...evaluation.places]
    .filter(([, place]) => place.file === file && holds(place, line, column))
    .sort(([, left], [, right]) => size(left) - size(right));
}

function holds(place: Place, line: number, column: number): boolean {
  const afterStart = line > place.line || (line === place.line && column >= place.column);
  return afterStart && (line < place.endLine || (line === place.endLine && column < place.endColumn));
}

function thingOf(evaluation: Evaluation, key: Key): Thing | undefined {
  const { quantities } = evaluation.numbers!;
  const site = siteThingAt(quantities, evaluation.job!, key);
  const shape = quantities.areas.flatMap(({ keptOut }) => keptOut).find(({ id }) => id === key);
  if (site !== undefined && shape !== undefined)
    return { ...site, tables: [table(rowsOf('kept-out', shape, evaluation.job!.system))] };
  if (site !== undefined) return site;
  if (key === 'job') {
    return {
      headline: quantities.title,
      owner: 'job-dig',
      numbers: quantities.dig,
      pointer: '/dig',
      leading: 'bankVolume'
    };
  }
  for (const [index, area] of quantities.areas.entries()) {
    const course = courseOf(evaluation.job!, area, key);
    if (course !== undefined) return course;
    const kept = area.keptOut.findIndex(shape => shape.id === key);
    if (kept >= 0) {
      const headline = `${key.replace(':', ' ')} in ${area.name}`;
      return {
        headline,
        owner: 'kept-out',
        numbers: area.keptOut[kept]!,
        pointer: `/areas/${index}/keptOut/${kept}`,
        leading: 'area'
      };
    }
    if (key !== area.id && !key.startsWith(`${area.id}/`)) continue;
    return partOf(area, `/areas/${index}`, key.slice(area.id.length + 1), evaluation.job!.system);
  }
  return undefined;
}

/** A border, band or inset of an area: the units that it is laid with, wherever in the area they lie. */
function courseOf({ areas, system }: Job, area: AreaQuantities, key: Key): Thing | undefined {
  const { borders, bands, insets } = areas.find(each => each.key === area.id)!;
  const inset = insets.find(each => each.key === key || each.paving.key === key);
  const course = [...borders, ...bands].find(each => each.key === key);
  const units = inset?.paving.units ?? (course === undefined ? [] : [course.unit]);
  const laying = (area.laying ?? []).filter(one => units.some(({ name }) => name === one.unit));
  if (laying.length === 0) return undefined;
  const word = key.slice(area.id.length + 1);
  const rows = (area.borderRows ?? []).filter(({ border }) => border === word);
  const what = inset === undefined ? course!.course : `inset ${inset.name}`;
  const tables = [rowsMarkdown(rows, system), unitsMarkdown(laying, system, `All in ${area.name}`, HEADLINE)];
  return { headline: `${what} in ${area.name}`, owner: 'laying', numbers: {}, pointer: '', tables };
}

function partOf(area: AreaQuantities, pointer: string, part: string, system: System): Thing | undefined {
  const word = part.split('/')[0]!;
  const layer = area.layers.findIndex(({ role }) => role === word);
  if (layer >= 0) {
    const { role, material } = area.layers[layer]!;
    const headline = `${role} of ${area.name}: ${material}`;
    return {
      headline,
      owner: 'layer',
      numbers: area.layers[layer]!,
      pointer: `${pointer}/layers/${layer}`,
      isBed: role === 'bed',
      leading: 'compactedVolume'
    };
  }
  if (word === 'paving' && area.laying?.[0] !== undefined) {
    const [laying, ...others] = area.laying;
    if (others.length > 0) {
      const tables = [unitsMarkdown(area.laying, system)];
      return { headline: `units of ${area.name}`, owner: 'laying', numbers: {}, pointer, tables };
    }
    return {
      headline: `${laying.unit} in ${laying.bond}`,
      owner: 'laying',
      numbers: laying,
      pointer: `${pointer}/laying/0`,
      leading: 'unitArea'
    };
  }
  if (word === 'joints' && area.joints !== undefined)
    return {
      headline: `joints of ${area.name}`,
      owner: 'joints',
      numbers: area.joints,
      pointer: `${pointer}/joints`,
      leading: 'volume'
    };
  if (word === 'geotextile' && area.geotextile !== undefined)
    return {
      headline: `geotextile under ${area.name}: ${area.geotextile.material}`,
      owner: 'geotextile',
      numbers: area.geotextile,
      pointer: `${pointer}/geotextile`,
      leading: 'area'
    };
  if (word === 'edges') {
    const name = part.slice('edges/'.length);
    const edge = area.edges.findIndex(other => other.name === name);
    if (edge < 0) return undefined;
    const { meets } = area.edges[edge]!;
    return {
      headline: `${name} of ${area.name}${meets === undefined ? '' : `, meets ${meets}`}`,
      owner: 'edge',
      numbers: area.edges[edge]!,
      pointer: `${pointer}/edges/${edge}`,
      leading: 'overhang'
    };
  }
  if (word === 'finish')
    return {
      tables: area.finish === undefined ? [] : [table(rowsOf('finish', area.finish, system))],
      headline: `dig of ${area.name}`,
      owner: 'dig',
      numbers: area.dig,
      pointer: `${pointer}/dig`,
      leading: 'deepest'
    };
  return part === '' || word === 'outline'
    ? {
        headline: area.name,
        owner: 'area',
        numbers: area,
        pointer,
        leading: 'netArea',
        tables: area.laying === undefined ? [] : [unitsMarkdown(area.laying, system, '', HEADLINE)]
      }
    : undefined;
}

function markdown(thing: Thing, evaluation: Evaluation, system: System): string {
  const rows = rowsOf(thing.owner, thing.numbers, system, thing.isBed, evaluation.job!.datum);
  const { leading } = thing;
  const working = leading === undefined ? undefined : evaluation.numbers!.workings[`${thing.pointer}/${leading}`];
  return [
    `**${markdownText(thing.headline)}**`,
    table(rows),
    working && `${markdownText(wordsOf(thing))}: _${markdownText(workingLine(working, system))}_`,
    ...(thing.tables ?? [])
  ]
    .filter(part => part !== undefined && part !== '')
    .join('\n\n');
}

/** The row that the working belongs to. */
function wordsOf({ owner, leading }: Thing): string {
  return quantitiesOf(owner).find(({ key }) => key === leading)!.words;
}

/** Words, the value, and the value in the other system, set off so that the two don't run together. */
function table(rows: readonly Row[]): string {
  if (rows.length === 0) return '';
  return [
    '| | | |',
    '|:--|--:|--:|',
    ...rows.map(({ words, value, other }) =>
      ['', markdownText(words), markdownText(value), other === undefined ? '' : `&emsp;${markdownText(other)}`, '']
        .join(' | ')
        .trim()
    )
  ].join('\n');
}
