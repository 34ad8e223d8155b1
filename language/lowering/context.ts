import { CstUtils, GrammarUtils, type AstNode, type CstNode } from 'langium';
import type { Finding, FindingValue, Fix, Place } from '../findings/finding.ts';
import type { Point } from '../geometry/index.ts';
import type { Severity } from '../job/severity.ts';
import type { Assumed, Given, Key, System } from '../job/job.ts';
import { kindOf, measureNamed, measureText } from '../measures/measures.ts';
import { isLet, isNegative, isQuantity, type Let, type Named } from '../syntax/generated/ast.ts';
import { nearest } from '../syntax/nearest.ts';
import { amountOf, capital, type Amount, type AmountContext, type Expression } from './amounts.ts';
import { aroundMeasured, fittingMeasures } from './missing-measure.ts';
import { KIND_WORDS, type Declared, type Kind, type Names, type SpecText } from './names.ts';
import { FAULTS } from '../findings/fault-list.ts';
import { SHIPPED_FILE } from '../library/shipped.ts';
import { OTHER_NAMES } from './other-names.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { spanOf, TextChanges } from './text-changes.ts';
import type { WrittenAmount } from './written-amounts.ts';

/** Kinds of quantity that a statement may want, by SI measure. */
export type Wanted = 'm' | 'm2' | 'm3' | 's' | 'kg' | 'kg/m3' | 'degrees' | '';

const WANTED_WORDS: Readonly<Record<Wanted, string>> = {
  m: 'a length such as `6 in` or `150 mm`',
  m2: 'an area such as `20 sq ft` or `2 m2`',
  m3: 'a volume such as `3 cu ft` or `0.1 m3`',
  s: 'a time such as `3 days`',
  kg: 'a mass such as `42 lb` or `19 kg`',
  'kg/m3': 'a density such as `140 lb per cu ft` or `2.2 t/m3`',
  degrees: 'an angle such as `30 degrees`',
  '': 'a share or plain number such as `2 %` or `1.25`'
};

const SLOPE = 'a slope such as `1:60` or `1/4 in per ft`';

/** By the key of what it measures: falls of a finish, and slopes that were measured. */
function isSlope(key: Key): boolean {
  return /\/(?:fall-\d+|across|slope)$/.test(key);
}

/** What was read from a text, and what is known to be broken by now. */
export interface Reading {
  /** Names of broken or missing things that the thing being read takes its numbers from. */
  readonly broken: string[];
}

/** A property of a statement, or one of a list in it; several of a list from the first to the last. */
export type Property = string | readonly [string, number, number?];

export interface Say {
  readonly values?: readonly FindingValue[];
  readonly related?: readonly { readonly node: AstNode; readonly text: SpecText; readonly message: string }[];
  readonly fixes?: readonly SaidFix[];
  readonly property?: Property;
  /** The numbers stand in spite of it. */
  readonly harmless?: true;
}

/** What else helps where a name leads nowhere: other fixes, and the names that fit there. */
interface Instead {
  readonly otherwise?: () => readonly SaidFix[];
  readonly among?: () => readonly string[];
}

/** A longer list of names is read by nobody. */
const MOST_LISTED = 24;

/** Of a longer list a person looks up the page. */
const MOST_CHOICES = 4;

/** No paved area is wider than this, m; beyond it a number is a slip of the key. */
export const LARGEST_LENGTH = 10_000;

/** A `let` may lean on others this deep; more is no spec that a person wrote. */
const MOST_LETS_DEEP = 100;

/**
 * What a place is told from: a line, with the side of it on which the place counts as out; or a point, with the direction of
 * its nought of angles, radians.
 */
export type ToldFrom =
  | { readonly from: Point; readonly to: Point; readonly side: 'left' | 'right' }
  | { readonly centre: Point; readonly zero: number };

/** What lowering shares from statement to statement: faults, places, names, and the thing being read. */
export class Context {
  readonly findings: Finding[] = [];
  readonly places = new Map<Key, Place>();
  /** What every quantity that was read comes to, where it stands. */
  readonly amounts = new Map<string, Map<number, WrittenAmount>>();
  /** What places are told from, by the key that they are read under. */
  readonly toldFrom = new Map<Key, ToldFrom>();
  /** Names that were offered where another led nowhere: what nothing uses may be what was meant. */
  readonly offeredNames = new Set<string>();
  readonly changes = new TextChanges();
  readonly names: Names;
  /** The job's own measures, for messages. */
  system: System = 'metric';
  private readonly brokenNodes: (text: SpecText, node: AstNode) => boolean;
  private readonly lets = new Map<Let, Amount | undefined | 'being read'>();
  private readonly reading: Reading[] = [];
  private letsDeep = 0;

  constructor(names: Names, brokenNodes: (text: SpecText, node: AstNode) => boolean) {
    this.names = names;
    this.brokenNodes = brokenNodes;
  }

  // ---- faults and places ----

  fault(text: SpecText, target: Key, node: AstNode, id: string, message: string, say: Say = {}): undefined {
    const place = placeOf(text, node, say.property);
    const fixes = (say.fixes ?? []).flatMap(({ title, safe = false, does }): Fix[] => {
      const edits = typeof does === 'string' ? [{ place, text: does }] : does;
      return edits.length === 0 ? [] : [{ title, safe, edits }];
    });
    const related = (say.related ?? []).map(({ node: other, text: otherText, message: why }) => ({
      ...placeOf(otherText, other),
      message: why
    }));
    const severity: Severity = FAULTS[id]!.severity;
    this.findings.push({
      id,
      family: 'fault',
      severity,
      message: capital(message),
      target,
      ...place,
      values: say.values ?? [],
      related,
      fixes
    });
    if (say.harmless === undefined) this.breaks(target);
    return undefined;
  }

  /** A declaration that leaves out what it can't do without. */
  incomplete(text: SpecText, target: Key, node: AstNode, message: string, fixes: readonly SaidFix[] = []): undefined {
    return this.fault(text, target, node, 'thing-incomplete', message, { property: 'name', fixes });
  }

  /** What ships never takes the place of what the job declares by the same name. */
  place(key: Key, text: SpecText, node: AstNode, property?: Property): Key {
    if (text.file === SHIPPED_FILE && this.places.has(key)) return key;
    this.places.set(key, placeOf(text, node, property));
    return key;
  }

  // ---- what breaks what ----

  /** Runs `read` and tells which broken or missing things it leant on. */
  watch<T>(read: () => T): { readonly value: T; readonly broken: readonly string[] } {
    const reading: Reading = { broken: [] };
    this.reading.push(reading);
    const value = read();
    this.reading.pop();
    return { value, broken: [...new Set(reading.broken)] };
  }

  breaks(name: string): void {
    this.reading.at(-1)?.broken.push(name);
  }

  // ---- names ----

  /** Finds a thing by name; an unknown name is a fault, unless the text is broken there. */
  find(
    text: SpecText,
    target: Key,
    node: AstNode,
    property: Property,
    name: string | undefined,
    kinds: readonly Kind[],
    { otherwise = () => [], among }: Instead = {}
  ): Declared | undefined {
    if (name === undefined) {
      this.breaks(target);
      return undefined;
    }
    for (const kind of kinds) {
      const found = this.names.find(text, kind, name);
      if (found === undefined) continue;
      if (this.isBroken(found.text, found.node)) this.breaks(name);
      return found;
    }
    const what = listed(kinds.flatMap(kind => KIND_WORDS[kind].split(/, | or /)));
    const known = among?.() ?? this.names.known(text, kinds);
    const nearestName = nearest(name, known);
    const others = meantBy(name, known);
    // `herringbone` is near to two that begin so: both may be meant.
    const isOneOfOthers = nearestName !== undefined && others.length > 1 && others.includes(nearestName);
    const near = isOneOfOthers ? undefined : nearestName;
    const meant = near === undefined ? others : [];
    for (const each of near === undefined ? meant : [near]) this.offeredNames.add(each);
    const other = this.otherKind(text, name, kinds);
    const knownAs = (names: readonly string[]): string =>
      names.length > 0 && names.length <= MOST_LISTED ? `; known: ${names.join(', ')}` : '';
    const help =
      meant.length > 0
        ? `Did you mean ${meant.map(each => `\`${each}\``).join(' or ')}?`
        : other !== undefined
          ? `\`${name}\` is ${article(KIND_WORDS[other])}${knownAs(known)}.`
          : near !== undefined
            ? `Did you mean \`${near}\`?`
            : `Declare it here or in a file that is used${knownAs(known)}.`;
    const fixes = near !== undefined ? [writing(near)] : otherwise();
    this.fault(text, target, node, 'unknown-name', `No ${what} is called \`${name}\`. ${help}`, {
      property,
      fixes: [...meant.map(writing), ...(other === undefined ? fixes : [])]
    });
    this.breaks(name);
    return undefined;
  }

  private otherKind(text: SpecText, name: string, kinds: readonly Kind[]): Kind | undefined {
    return (Object.keys(KIND_WORDS) as Kind[]).find(
      kind => !kinds.includes(kind) && this.names.peek(text, kind, name) !== undefined
    );
  }

  isBroken(text: SpecText, node: AstNode): boolean {
    return this.brokenNodes(text, node);
  }

  /** A word out of a fixed list; anything else is a fault that lists them. */
  word<T extends string>(
    text: SpecText,
    target: Key,
    node: AstNode,
    property: Property,
    word: string | undefined,
    known: readonly T[]
  ): T | undefined {
    if (word === undefined) {
      this.breaks(target);
      return undefined;
    }
    if ((known as readonly string[]).includes(word)) return word as T;
    const near = nearest(word, known);
    return this.fault(
      text,
      target,
      node,
      'unknown-word',
      `\`${word}\` is not known here. Write one of: ${known.join(', ')}.`,
      {
        property,
        fixes: near !== undefined ? [writing(near)] : known.length <= MOST_CHOICES ? known.map(writing) : []
      }
    );
  }

  // ---- quantities ----

  amount(text: SpecText, target: Key, node: Expression | undefined, measure?: string): Amount | undefined {
    const context: AmountContext = {
      named: named => this.letAmount(text, target, named),
      fault: (at, id, message, fixes) => this.fault(text, target, at, id, message, fixes === undefined ? {} : { fixes })
    };
    const amount = amountOf(node, context, measure);
    if (amount !== undefined && node?.$cstNode !== undefined) this.noteAmount(text.file, node.$cstNode, amount);
    return amount;
  }

  private noteAmount(file: string, { offset, end }: CstNode, { value, dimensions }: Amount): void {
    const ofFile = this.amounts.get(file) ?? new Map<number, WrittenAmount>();
    this.amounts.set(file, ofFile);
    ofFile.set(offset, { end, value: value.valueOf(), measure: measureText(dimensions) });
  }

  private letAmount(text: SpecText, target: Key, named: Named): Amount | undefined {
    const found = this.find(text, target, named, 'to', named.to?.$refText, ['let']);
    if (found === undefined || !isLet(found.node)) return undefined;
    const node = found.node;
    const known = this.lets.get(node);
    if (known === 'being read' || this.letsDeep >= MOST_LETS_DEEP)
      return this.fault(
        text,
        target,
        named,
        'let-in-circle',
        `\`${found.name}\` leans on itself, or on too many others in a row.`
      );
    if (known !== undefined || this.lets.has(node)) {
      if (known === undefined) this.breaks(found.name);
      return known;
    }
    this.lets.set(node, 'being read');
    this.letsDeep++;
    const { value, broken } = this.watch(() => this.letValue(found.text, node));
    this.letsDeep--;
    for (const name of broken) this.breaks(name);
    this.lets.set(node, value);
    if (value === undefined) this.breaks(found.name);
    return value;
  }

  letValue(text: SpecText, node: Let): Amount | undefined {
    const key = `let:${node.name}`;
    return node.value === undefined ? undefined : this.amount(text, key, node.value as Expression);
  }

  /** A quantity of the wanted kind, in SI, placed under `key`; undefined when a fault was told. */
  given(
    text: SpecText,
    key: Key,
    node: Expression | undefined,
    wanted: Wanted,
    limits: Limits = POSITIVE,
    list: ListEnd = {}
  ): Given | undefined {
    if (node === undefined) {
      this.breaks(key);
      return undefined;
    }
    const { measure } = list;
    const amount = this.amount(text, key, node, measure);
    if (amount === undefined) return undefined;
    const value = amount.value.valueOf();
    const isNought = amount.value.equals(0) && amount.bare;
    if (!isNought && measureText(amount.dimensions) !== wanted) {
      return amount.bare
        ? this.fault(
            text,
            key,
            node,
            'measure-missing',
            `\`${writtenOf(node)}\` has no measure. Write ${WANTED_WORDS[wanted]}.`,
            { fixes: this.measureFixes(text, key, node, [wanted, value], list) }
          )
        : this.fault(
            text,
            key,
            node,
            'wrong-kind',
            `\`${writtenOf(node)}\` is ${kindOf(amount.dimensions)}; here stands ${isSlope(key) ? SLOPE : WANTED_WORDS[wanted]}.`,
            { fixes: wanted === 'kg/m3' ? densityFixes(node) : isSlope(key) ? slopeFixes(node) : [] }
          );
    }
    const tooLarge = wanted === 'm' ? LARGEST_LENGTH : LARGEST_OTHER;
    if (value < limits.from || (limits.above && value === limits.from) || Math.abs(value) > tooLarge)
      return this.fault(
        text,
        key,
        node,
        'out-of-range',
        Math.abs(value) > tooLarge
          ? `\`${writtenOf(node)}\` is far too large to be meant.`
          : `\`${writtenOf(node)}\` can't be meant: ${limits.above ? 'more than nought is wanted' : 'nothing below nought can stand here'}.`,
        { fixes: isNegative(node) && value > -tooLarge ? [writing(writtenOf(node.value))] : [] }
      );
    this.place(key, text, node);
    return { value, key, written: writtenWith(node, isNought ? undefined : amount.bare ? undefined : measure) };
  }

  /** The measures that fit, behind the number or at the end of its list, where one counts for all. */
  private measureFixes(
    text: SpecText,
    key: Key,
    node: Expression,
    [wanted, value]: [Wanted, number],
    list: ListEnd
  ): SaidFix[] {
    const around = aroundMeasured(node);
    if (around === undefined && list.node === undefined) return [];
    const { start, end } = spanOf(list.node ?? node);
    const written = text.parsed.text.slice(start, end);
    return fittingMeasures(wanted, { value, written }, key, this.system).map(measure =>
      list.node === undefined
        ? writing(`${around![0]}${written}${around![1]} ${measure}`)
        : { ...writing(`${written} ${measure}`), does: [this.changes.behind(text, list.node, ` ${measure}`)] }
    );
  }
}

/** The list that a number stands in. */
export interface ListEnd {
  /** The measure at its end counts for all. */
  readonly measure?: string | undefined;
  /** What a measure for all can be written behind. */
  readonly node?: AstNode | undefined;
}

/** `140 lb` where a density is wanted: what is left out is the volume. */
/** `falling 1/4 in` lacks the length on which it falls so much. */
function slopeFixes(node: Expression): SaidFix[] {
  const measure = isQuantity(node) && node.per === undefined ? node.parts.at(-1)!.measure : undefined;
  if (measure === undefined || measureText(measureNamed(measure)?.dimensions ?? {}) !== 'm') return [];
  return [writing(`${writtenOf(node)} per ${/m$/.test(measure) ? 'm' : 'ft'}`)];
}

function densityFixes(node: Expression): SaidFix[] {
  const measure = isQuantity(node) && node.per === undefined ? node.parts[0]!.measure?.toLowerCase() : undefined;
  if (measure === undefined || measureText(measureNamed(measure)?.dimensions ?? {}) !== 'kg') return [];
  return [writing(`${writtenOf(node)} per ${/^(?:lb|pound|short)/.test(measure) ? 'cu ft' : 'm3'}`)];
}

export interface Limits {
  readonly from: number;
  /** The limit itself is refused too. */
  readonly above: boolean;
}

export const POSITIVE: Limits = { from: 0, above: true };
export const NOT_NEGATIVE: Limits = { from: 0, above: false };
export const ANY: Limits = { from: -Infinity, above: false };

const LARGEST_OTHER = 1e9;

/** Names that another may stand for: `washed-sand` for `sand`, `house-wall` for `house`, `lawn` for `grass`. */
export function meantBy(name: string, known: readonly string[]): string[] {
  const longer = known.filter(other => other !== name && `-${other}-`.includes(`-${name}-`));
  const called = (Object.hasOwn(OTHER_NAMES, name) ? OTHER_NAMES[name]! : []).filter(other => known.includes(other));
  const meant = [...new Set([...longer, ...called])];
  return meant.length <= MOST_CHOICES ? meant : [];
}

/** `area, box or pit` */
function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)!}`;
}

/** `an area`, `a box or pit`. */
export function article(words: string): string {
  return `${/^[aeiou]/.test(words) && !words.startsWith('unit') && !words.startsWith('use') ? 'an' : 'a'} ${words}`;
}

/** As a shipped value stands in for one left out. */
export function assumed(given: Given, because: Assumed): Given {
  return { value: given.value, written: given.written, assumed: because };
}

/** Stands for the word that a statement begins with. */
export const KEYWORD = 'keyword';

/** As written, but for white space and kinds of minus: formatting a text changes nothing here. */
export function writtenOf(node: AstNode): string {
  let written = '';
  let before = '';
  if (node.$cstNode === undefined) return '';
  // Most are written plainly, and need not be put together from their words.
  if (PLAINLY_WRITTEN.test(node.$cstNode.text)) return node.$cstNode.text;
  for (const { text, hidden } of CstUtils.flattenCst(node.$cstNode)) {
    if (hidden || text === '') continue;
    const touches = before === '' || before === '(' || /^(?:[),]|['"°′″’”])$/.test(text) || /^minus/.test(before);
    const isMinus = text === '-' || text === '−';
    written += (touches ? '' : ' ') + (isMinus ? '-' : text);
    // A minus before a value, not between two, stands close to it.
    before = isMinus && (before === '' || /^[-+*/(,]$/.test(before)) ? 'minus' : text;
  }
  return written;
}

/** `150 mm`, `6 1/2 in`. */
const PLAINLY_WRITTEN = /^[0-9]+(?:\.[0-9]+)?(?: [0-9]+\/[0-9]+)? [a-z]+$/;

/** A number in a list is shown with the measure at the list's end. */
function writtenWith(node: AstNode, measure: string | undefined): string {
  const written = writtenOf(node);
  return measure === undefined || measureNamed(measure) === undefined || /[^0-9./\s½¼¾⅓⅔⅛⅜⅝⅞-]/.test(written)
    ? written
    : `${written} ${measure}`;
}

export function placeOf(text: SpecText, node: AstNode, property?: Property): Place {
  if (property === KEYWORD) {
    const { file, line, column } = placeOf(text, node);
    const word = /^[\p{L}-]+/u.exec(node.$cstNode?.text ?? '')?.[0] ?? '';
    return { file, line, column, endLine: line, endColumn: column + word.length };
  }
  const [name, first, last] = typeof property === 'string' ? [property, 0] : (property ?? []);
  const found = (index: number): CstNode | undefined =>
    name === undefined ? undefined : GrammarUtils.findNodeForProperty(node.$cstNode, name, index);
  const from = found(first ?? 0) ?? node.$cstNode;
  const to = last === undefined ? from : (found(last) ?? from);
  const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  const range = { start: (from?.range ?? nowhere).start, end: (to?.range ?? nowhere).end };
  return {
    file: text.file,
    line: range.start.line + 1,
    column: range.start.character + 1,
    endLine: range.end.line + 1,
    endColumn: range.end.character + 1
  };
}
