import { listed } from '../findings/listed.ts';
import { MEMBER_NAMES } from '../findings/members/members.ts';
import type { Concern } from '../job/rule.ts';

/** Conditions and needs of rules as one would say them; `written` is as it stands in the rule, without its first word. */

/** ` under cars or trucks on clay, where winters freeze`: what follows a thing; of several conditions all hold. */
export function conditionsInWords(concerns: Concern, written: readonly string[]): string {
  const each = written.map(alternatives);
  const plain = each.filter(any => any.length === 1).flatMap(([all]) => all!);
  const parts = [
    ...(plain.length === 0 ? [] : [allOf(concerns, plain)]),
    ...each.filter(any => any.length > 1).map(any => anyOf(concerns, any))
  ];
  const [first, ...others] = parts;
  if (first === undefined) return '';
  const hasWhere = / where |^where /.test(first);
  const more = others.map(part => (hasWhere || !part.startsWith('where ') ? `, and ${part}` : `, ${part}`));
  return `${first.startsWith('where ') ? ', ' : ' '}${first}${more.join('')}`;
}

/** `the base is at least 4 in (100 mm) under foot traffic`; `more` are conditions besides its own. */
export function needInWords(concerns: Concern, written: string, more: readonly string[]): string {
  const [test, condition] = written.split(' when ') as [string, string?];
  const own = condition === undefined ? [] : [condition];
  return `${clause(test)}${conditionsInWords(concerns, [...own, ...more]).replace(/^, (?=where)/, ' ')}`;
}

/** Each test by itself: the lists of which one has to hold as a whole. */
function alternatives(condition: string): string[][] {
  return condition.split(' or ').map(all => all.split(' and '));
}

function anyOf(concerns: Concern, any: readonly (readonly string[])[]): string {
  const isClauses = any.every(all => all.every(test => placeOf(concerns, test) === undefined));
  if (isClauses) return `where ${listed(withoutRepeats(any.map(all => clausesOf(all))), 'or')}`;
  return `either ${any.map(all => allOf(concerns, all)).join(' or ')}`;
}

function allOf(concerns: Concern, tests: readonly string[]): string {
  const places = tests.flatMap(test => placeOf(concerns, test) ?? []).sort(ownFirst);
  const others = tests.filter(test => placeOf(concerns, test) === undefined);
  const where = others.length === 0 ? [] : [`where ${clausesOf(others)}`];
  return [...(places.length === 0 ? [] : [places.join(' ')]), ...where].join(', ');
}

/** What a thing is stands before where it is. */
function ownFirst(left: string, right: string): number {
  const [one, other] = [left, right].map(place => Number(!/^(?:that|of) /.test(place)));
  return one! - other!;
}

function clausesOf(tests: readonly string[]): string {
  return listed(withoutRepeats(tests.map(clause)), 'and');
}

/** `the joint is dense`, `the joint is not said`: the second is told without its beginning, behind the first. */
function withoutRepeats(clauses: readonly string[]): string[] {
  return clauses.map((each, at) => {
    const subject = /^.*? is /.exec(each)?.[0];
    const before = clauses[at - 1];
    return subject !== undefined && before?.startsWith(subject) === true ? each.slice(subject.length) : each;
  });
}

// ---- tests ----

/** `heaviest-traffic`, `is`, `cars, trucks` */
function partsOf(test: string): { name: string; sign: string; rest: string } | undefined {
  const [, name, sign, rest] =
    /^(.*?) (is not said|is said|is not|is|at least|at most|more than|less than)(?: (.*))?$/.exec(test) ?? [];
  return name === undefined || sign === undefined ? undefined : { name, sign, rest: rest ?? '' };
}

/** What can follow the thing itself: `under foot traffic`, `on clay`; undefined for what has to stand after `where`. */
function placeOf(concerns: Concern, test: string): string | undefined {
  const { name, sign, rest } = partsOf(test) ?? { name: '', sign: '', rest: '' };
  if (sign !== 'is' && !(sign === 'is not' && name === 'soil')) return undefined;
  const words = rest.split(', ');
  if (name === 'traffic' || name === 'heaviest-traffic') return `under ${listed(words.map(trafficNamed), 'or')}`;
  if (name === 'soil') return sign === 'is' ? `on ${listed(words, 'or')}` : `on soil other than ${listed(words, 'or')}`;
  const ofUnits = MADE_OF[concerns];
  if (name === 'made-of' && ofUnits !== undefined) return `${ofUnits} ${listed(words, 'or')}`;
  if (concerns === 'layer' && name === 'role') return `that is a ${listed(words, 'or')}`;
  if (concerns === 'side' && name === 'meets') return `that meets ${listed(words, 'or')}`;
  if (concerns === 'side' && name === 'runs') return rest === 'straight' ? 'that runs straight' : 'that is curved';
  return undefined;
}

/** How a thing stands to what its units are made of. */
const MADE_OF: Readonly<Partial<Record<Concern, string>>> = {
  area: 'with units of',
  layer: 'under units of',
  side: 'with units of',
  unit: 'of'
};

function trafficNamed(word: string): string {
  return word === 'foot' ? 'foot traffic' : word === 'turning' ? 'wheels that turn' : word;
}

/** A test as a sentence of its own. */
function clause(test: string): string {
  const usual = SAID_OTHERWISE[test];
  if (usual !== undefined) return usual;
  const parts = partsOf(test);
  if (parts === undefined) return quantity(test);
  const { name, sign, rest } = parts;
  if (name === 'finish-below-benchmark') return finish(sign, rest);
  if (name === 'meets') return `it ${sign === 'is' ? 'meets' : 'does not meet'} ${listed(rest.split(', '), 'or')}`;
  if (name === 'benchmark') return `the benchmark ${sign} called ${listed(rest.split(', '), 'or')}`;
  if (sign === 'is' || sign === 'is not') return `${quantity(name)} ${sign} ${listed(rest.split(', '), 'or')}`;
  if (sign === 'is said' || sign === 'is not said') return `${quantity(name)} ${sign}`;
  return `${quantity(name)} is ${sign} ${quantity(rest)}`;
}

/** `the finish is at least 2 in (50 mm) below the benchmark`; a height above it is a depth less than nought. */
function finish(sign: string, limit: string): string {
  if (!limit.includes('-')) return `the finish is ${sign} ${quantity(limit)} below the benchmark`;
  const turned = TURNED[sign] ?? sign;
  return `the finish is ${turned} ${quantity(limit.replace(/- ?/g, ''))} above the benchmark`;
}

const TURNED: Readonly<Record<string, string>> = {
  'at least': 'at most',
  'at most': 'at least',
  'more than': 'less than',
  'less than': 'more than'
};

/** Tests that one says in other words than those of the rule. */
const SAID_OTHERWISE: Readonly<Record<string, string>> = {
  'base at most 0 in': 'there is no base',
  'base at most 0 mm': 'there is no base',
  'base more than 0 in': 'there is a base',
  'base more than 0 mm': 'there is a base',
  'drainage is poorly': 'the ground drains poorly',
  'drainage is well': 'the ground drains well',
  'edging is said': 'there is an edging',
  'edging is not said': 'there is no edging',
  'edging-footing is said': 'the edging stands on concrete',
  'edging-footing is not said': 'the edging does not stand on concrete',
  'frost-heave is likely': 'the soil is likely to heave in frost',
  'frost-heave is unlikely': 'the soil hardly heaves in frost',
  'geotextile is said': 'there is a geotextile',
  'geotextile is not said': 'there is no geotextile',
  'holds is nothing': 'nothing holds the paving there',
  'holds is paving': 'the paving is held there',
  'made-of is said': 'units are laid',
  'order-of-sizes is thickness-last': 'the thickness stands last',
  'runs is curved': 'the side is curved',
  'runs is straight': 'the side runs straight',
  'winters is freeze': 'winters freeze',
  'winters is mild': 'winters are mild',
  'winters is said': 'the winters are said'
};

// ---- quantities ----

/** A sum with its names as one says them. */
function quantity(written: string): string {
  return written
    .replace(/[a-z]+(?:-[a-z]+)*/g, name => (MEMBER_NAMES.has(name) ? plainName(name) : name))
    .replace(/(?<![0-9.])[0-9]{5,}/g, number => number.replace(/(?<=[0-9])(?=(?:[0-9]{3})+$)/g, ','))
    .replace(/(^|\()- (?=[0-9])/g, '$1-')
    .replaceAll(' * ', ' times ')
    .replaceAll(' - ', ' less ');
}

function plainName(name: string): string {
  return PLAIN_NAMES[name] ?? `the ${name.replaceAll('-', ' ')}`;
}

/** Names that read badly in a sentence. */
const PLAIN_NAMES: Readonly<Record<string, string>> = {
  'above-base': 'the bed and the units above it',
  'base-past-edging': 'the base past the edging',
  'base-grading': 'the grading of the base',
  'bed-grading': 'the grading of the bed',
  bearing: 'the bearing ratio of the ground',
  compacted: 'the compacted density',
  'dig-deepest': 'the deepest dig',
  face: 'the area of the face',
  ground: 'the ground beyond',
  'geotextile-lap': 'the lap of the geotextile',
  'joint-grading': 'the grading of what fills the joints',
  'made-of': 'the material of the unit',
  meets: 'what it meets',
  'spike-spacing': 'the distance from spike to spike',
  'unit-length': 'the length of the units',
  'unit-thickness': 'the thickness of the units',
  'upper-base-grading': 'the grading of the stone that the bed lies on'
};
