import type { AstNode } from 'langium';
import type { Print } from '../measures/print.ts';
import { CONCERNS, memberOf, membersOf } from '../findings/members/members.ts';
import type { System } from '../job/job.ts';
import type { Concern, RuleLimit, RuleSum, Worked } from '../job/rule.ts';
import { combine, kindOf, measureNamed, measureText, type Dimensions } from '../measures/measures.ts';
import * as ast from '../syntax/generated/ast.ts';
import { nearest } from '../syntax/nearest.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';

/** Where the sums of a rule stand, and what they can look at. */
export interface RuleScope {
  readonly text: SpecText;
  readonly key: string;
  readonly concerns: Concern;
  /** How what a need comes to is printed, where there is a need. */
  readonly worked?: { readonly measure: string; readonly print: Print };
}

/** A sum of a rule with the kind of value that it comes to. */
export interface TypedSum {
  readonly sum: RuleSum;
  /** SI measure; `words` for names and words. */
  readonly measure: string;
  readonly print: Print;
  /** A plain number without a measure: nought fits everywhere. */
  readonly bare: boolean;
}

/** Reads a sum of a rule; undefined where a fault was told. */
export function ruleSum(context: Context, scope: RuleScope, node: Expression | undefined): TypedSum | undefined {
  if (node === undefined) return undefined;
  if (!looksAtThings(scope, node)) return constant(context, scope, node);
  if (ast.isNamed(node)) return quantity(context, scope, node);
  if (ast.isGroup(node)) return ruleSum(context, scope, node.value as Expression | undefined);
  if (ast.isNegative(node)) {
    const value = ruleSum(context, scope, node.value as Expression | undefined);
    return value && { ...value, sum: { is: 'sum', sign: '-', left: NOUGHT, right: value.sum } };
  }
  return ast.isSum(node) ? signed(context, scope, node) : undefined;
}

const NOUGHT: RuleSum = { is: 'number', value: 0, written: '0' };

/** Numbers and values of one's own alone come to a number. */
function constant(context: Context, scope: RuleScope, node: Expression): TypedSum | undefined {
  const odd = namesIn(node).find(({ to }) => context.names.peek(scope.text, 'let', to?.$refText ?? '') === undefined);
  if (odd !== undefined) return unknown(context, scope, odd);
  const amount = context.amount(scope.text, scope.key, node);
  if (amount === undefined) return undefined;
  const measure = measureText(amount.dimensions);
  const written = ast.isNamed(node) || ast.isSum(node) ? '' : writtenOf(node);
  const sum: RuleSum = { is: 'number', value: amount.value.valueOf(), written };
  return { sum, measure, print: printOf(measure), bare: amount.bare };
}

function quantity(context: Context, { text, key, concerns, worked }: RuleScope, node: ast.Named): TypedSum | undefined {
  const name = node.to?.$refText ?? '';
  if (isWorked(name) && worked !== undefined)
    return { sum: { is: 'worked', name }, measure: worked.measure, print: worked.print, bare: false };
  const member = memberOf(concerns, name);
  if (member === undefined)
    return context.fault(
      text,
      key,
      node,
      'wrong-kind',
      `\`${name}\` stands for what a comparison comes to: it can be told only of \`needs\` that compares, such as \`needs base at least 4 in\`.`
    );
  return { sum: { is: 'quantity', name }, measure: member.measure, print: member.print, bare: false };
}

function unknown(context: Context, scope: RuleScope, node: ast.Named): undefined {
  const { text, key, concerns } = scope;
  const name = node.to?.$refText ?? '';
  const known = membersOf(concerns).map(member => member.name);
  const worked = scope.worked === undefined ? [] : ['needed', 'missing'];
  const all = [...worked, ...known, ...context.names.known(text, ['let'])];
  const near = nearest(name, all) ?? all.find(each => name.length >= SHORTEST_BEGINNING && each.startsWith(name));
  const other = CONCERNS.find(each => memberOf(each, name) !== undefined);
  const help =
    other !== undefined
      ? `One about ${CONCERN_WORDS[other]} does: \`concerns ${other}\`.`
      : near === undefined
        ? oneOf('It can look at', known)
        : `Did you mean \`${near}\`?`;
  return context.fault(
    text,
    key,
    node,
    'unknown-name',
    `A rule about ${CONCERN_WORDS[concerns]} finds nothing called \`${name}\`. ${help}`,
    { property: 'to', fixes: near === undefined || other !== undefined ? [] : [writing(near)] }
  );
}

/** `need` begins `needed`; of fewer letters nobody can tell. */
const SHORTEST_BEGINNING = 3;

/** A longer list is read by nobody. */
const MOST_LISTED = 12;

/** All that a rule can look at, or write; of many how to find them. */
export function oneOf(lead: string, known: readonly string[]): string {
  if (known.length <= MOST_LISTED) return `${lead}: ${known.join(', ')}.`;
  return 'Ctrl+Space (in the editor) or `paving explain rules` lists what there is.';
}

const CONCERN_WORDS: Readonly<Record<Concern, string>> = {
  area: 'an area',
  layer: 'a layer',
  side: 'a side',
  unit: 'a unit',
  material: 'a material',
  site: 'the site',
  gate: 'a gate',
  box: 'a box',
  pipe: 'a pipe',
  drain: 'a drain',
  route: 'a route',
  tape: 'a tape',
  reading: 'a reading',
  delivery: 'a delivery'
};

function signed(context: Context, scope: RuleScope, node: ast.Sum): TypedSum | undefined {
  const left = ruleSum(context, scope, node.left as Expression | undefined);
  const right = ruleSum(context, scope, node.right as Expression | undefined);
  if (left === undefined || right === undefined) return undefined;
  for (const side of [left, right])
    if (side.measure === 'words')
      return context.fault(scope.text, scope.key, node, 'wrong-kind', 'A name or a word can’t stand in a sum.');
  const sign = node.operator as '+' | '-' | '*' | '/';
  const sum: RuleSum = { is: 'sum', sign, left: left.sum, right: right.sum };
  const [one, other] = [dimensionsOf(left.measure), dimensionsOf(right.measure)];
  if (sign === '*' || sign === '/') {
    const measure = measureText(combine(one, other, sign === '*' ? 1 : -1));
    return { sum, measure, print: printOf(measure), bare: left.bare && right.bare };
  }
  if (left.measure !== right.measure && !left.bare && !right.bare)
    return context.fault(
      scope.text,
      scope.key,
      node,
      'kinds-mixed',
      `This adds ${kindOf(one)} and ${kindOf(other)}; both must be of one kind.`
    );
  const kept = left.bare ? right : left;
  return { sum, measure: kept.measure, print: kept.print, bare: left.bare && right.bare };
}

function dimensionsOf(measure: string): Dimensions {
  return measure === '' ? {} : (measureNamed(measure)?.dimensions ?? { [measure]: 1 });
}

function printOf(measure: string): Print {
  return PRINTS[measure] ?? 'number';
}

const PRINTS: Readonly<Record<string, Print>> = {
  m: 'fine',
  m2: 'area',
  m3: 'stone-volume',
  kg: 'mass',
  'kg/m3': 'density'
};

// ---- limits ----

/** A limit that fits what it is compared with; round in both systems where the rule says so: `4 in (100 mm)`. */
export function ruleLimit(
  context: Context,
  scope: RuleScope,
  node: ast.Limit | undefined,
  subject: TypedSum
): RuleLimit | undefined {
  const value = node && fitting(context, scope, node.value as Expression | undefined, subject);
  if (node === undefined || value === undefined) return undefined;
  const system = systemOfLimit(node.value);
  if (node.other === undefined) return inBoth(value.sum, system);
  const other = fitting(context, scope, node.other as Expression, subject);
  if (other === undefined) return undefined;
  const isConstant = value.sum.is === 'number' && other.sum.is === 'number';
  if (!isConstant || system === undefined || systemOfLimit(node.other) !== OTHER_SYSTEM[system])
    return context.fault(
      scope.text,
      scope.key,
      node,
      'wrong-kind',
      'In brackets stands the same limit, round in the other measures: `4 in (100 mm)`.'
    );
  const ratio = (other.sum as { value: number }).value / (value.sum as { value: number }).value;
  if (!(ratio > 1 - MOST_APART && ratio < 1 + MOST_APART))
    return context.fault(
      scope.text,
      scope.key,
      node,
      'out-of-range',
      `\`${writtenOf(node.value)}\` and \`${writtenOf(node.other)}\` are too far apart to be one limit.`
    );
  return { [system]: value.sum, [OTHER_SYSTEM[system]]: other.sum } as unknown as RuleLimit;
}

const OTHER_SYSTEM: Readonly<Record<System, System>> = { imperial: 'metric', metric: 'imperial' };

/** 1/16 in and 2 mm are told as one limit. */
const MOST_APART = 0.3;

function fitting(
  context: Context,
  scope: RuleScope,
  node: Expression | undefined,
  subject: TypedSum
): TypedSum | undefined {
  const value = ruleSum(context, scope, node);
  if (value === undefined || node === undefined) return undefined;
  const isNought = value.bare && value.sum.is === 'number' && value.sum.value === 0;
  if (value.measure === subject.measure || isNought) return value;
  const wanted = subject.measure === 'words' ? 'a word' : kindOf(dimensionsOf(subject.measure));
  return context.fault(
    scope.text,
    scope.key,
    node,
    value.bare ? 'measure-missing' : 'wrong-kind',
    value.bare
      ? `\`${writtenOf(node)}\` has no measure; it is compared with ${wanted}.`
      : `\`${writtenOf(node)}\` is ${value.measure === 'words' ? 'a name' : kindOf(dimensionsOf(value.measure))}; it is compared with ${wanted}.`
  );
}

/** One limit for both systems; as written it is told only in the measures that it is written in. */
function inBoth(sum: RuleSum, system: System | undefined): RuleLimit {
  if (sum.is !== 'number' || system === undefined) return { imperial: sum, metric: sum };
  return { [system]: sum, [OTHER_SYSTEM[system]]: { ...sum, written: '' } } as unknown as RuleLimit;
}

/** The system in whose measures a limit is written; undefined for shares, counts and sums over quantities. */
function systemOfLimit(node: AstNode | undefined): System | undefined {
  const measure = /[\p{L}'"″′’”][\p{L}\p{N} '"″′’”/]*$/u.exec(writtenOf(node!).replace(/[()]/g, ''))?.[0];
  if (measure === undefined) return undefined;
  return METRIC_MEASURE.test(measure.trim()) ? 'metric' : measureNamed(measure.trim().split(' per ')[0]!) && 'imperial';
}

const METRIC_MEASURE = /^(?:(?:sq |cu )?(?:mm|cm|m|met(?:re|er)s?)[23²³]?|kg|t|tonnes?|l|litres?)(?:\b|$)/i;

// ---- names ----

function isWorked(name: string): name is Worked {
  return name === 'needed' || name === 'missing';
}

function looksAtThings({ concerns }: RuleScope, node: Expression): boolean {
  return namesIn(node).some(({ to }) => {
    const name = to?.$refText ?? '';
    return isWorked(name) || memberOf(concerns, name) !== undefined;
  });
}

function namesIn(node: Expression | undefined): ast.Named[] {
  if (node === undefined) return [];
  if (ast.isNamed(node)) return [node];
  if (ast.isGroup(node) || ast.isNegative(node)) return namesIn(node.value as Expression | undefined);
  return ast.isSum(node)
    ? [...namesIn(node.left as Expression | undefined), ...namesIn(node.right as Expression | undefined)]
    : [];
}

/** The quantities that a sum looks at. */
export function quantitiesIn(sum: RuleSum): string[] {
  if (sum.is === 'quantity') return [sum.name];
  return sum.is === 'sum' ? [...quantitiesIn(sum.left), ...quantitiesIn(sum.right)] : [];
}
