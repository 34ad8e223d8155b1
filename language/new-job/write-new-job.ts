import type { Place } from '../findings/finding.ts';
import { formatText } from '../format/format.ts';
import { SHIPPED_SIDES } from '../library/shipped.ts';
import { USUAL_VALUES } from '../library/usual-values.ts';
import type { Paving } from '../paving.ts';
import { withUsual, type AllAnswers, type Answers, type CountryAnswer, type NearAnswer } from './answers.ts';
import {
  bondFor,
  countryOf,
  edgingFor,
  layersFor,
  needsGeotextile,
  siteFor,
  systemOf,
  trafficOf,
  unitFor
} from './build-up.ts';
import { fallFor } from './fall.ts';
import { heightsFor } from './heights.ts';
import { leastBase } from './least-base.ts';

/** A spec as written for a person who answered the questions. */
export interface NewJob {
  /** In canonical form. */
  readonly text: string;
  /** A name for its file. */
  readonly fileName: string;
  /** The value in the text that a person measures first. */
  readonly firstToMeasure: Omit<Place, 'file'>;
}

/** Writes the whole spec. The answers have been checked; where one is missing the usual one counts. */
export function writeNewJob(given: Answers, trial: Paving): NewJob {
  const { parse } = trial;
  const answers = withUsual(given);
  const blocks = [
    head(answers),
    job(answers),
    site(answers),
    unit(answers),
    edging(answers),
    area(answers, leastBase(answers, trial))
  ];
  const text = formatText(
    blocks
      .filter(lines => lines.length > 0)
      .map(lines => lines.join('\n'))
      .join('\n\n') + '\n',
    parse
  );
  return { text, fileName: `${nameOf(answers)}.paving`, firstToMeasure: valueOf('topsoil', text) };
}

function nameOf({ traffic }: AllAnswers): string {
  return traffic === 'foot' ? 'patio' : traffic === 'trucks' ? 'yard' : 'drive';
}

/** An unsaved text is shown by its first line. */
const head = (answers: AllAnswers): string[] => [
  `// New ${nameOf(answers)}, written from a few answers.`,
  '// What is marked `measure` is a usual value: measure, and write your own.',
  '// Before you dig, have public and private lines located: gas, power, water, drains, cables.',
  '// Local codes and licensed practice stand over everything here.'
];

function job(answers: AllAnswers): string[] {
  const show = systemOf(answers) === 'imperial' ? 'feet-and-inches' : 'metric';
  return [`job "New ${nameOf(answers)}" {`, `rules ${countryOf(answers)}`, `show ${show}`, '}'];
}

function site(answers: AllAnswers): string[] {
  const { country, near, winters } = answers;
  const [soil, frozen] = siteFor(answers) as [string, string];
  const { benchmark, means, ground } = heightsFor(near, country);
  const rules = winters === 'freeze' ? NO_FROST_RULES[country] : undefined;
  const frost = rules === undefined ? '' : ` // ${rules}`;
  return [
    'site {',
    soil,
    `topsoil ${USUAL_VALUES.topsoil[systemOf(answers)]} // measure: dig to where the dark soil ends`,
    `${frozen}${frost}`,
    `benchmark ${benchmark} // ${means}`,
    `ground ${ground} // measure: the ground in the middle of the place`,
    '}'
  ];
}

const NO_FROST_RULES: Readonly<Partial<Record<CountryAnswer, string>>> = {
  britain: 'the rules for Britain say nothing of frost: ask locally',
  ireland: 'the rules for Ireland say nothing of frost: ask locally'
};

function unit(answers: AllAnswers): string[] {
  const { name, size } = unitFor(answers);
  return [`unit ${name} {`, `size ${size} // measure: lay ten tight, divide by ten`, '}'];
}

function edging(answers: AllAnswers): string[] {
  const { declared } = edgingFor(answers);
  if (declared === undefined || sides(answers).every(({ thing }) => holdsPaving(thing))) return [];
  return [
    '// On a strip of concrete of its own; what its trench takes is not counted here yet.',
    `material ${declared.name} {`,
    ...declared.statements.map((statement, index) =>
      index === 1 ? `${statement} // measure: as sold where you buy` : statement
    ),
    '}'
  ];
}

function area(answers: AllAnswers, least: string): string[] {
  const { near, country, traffic, size } = answers;
  const { words, means } = fallFor(answers);
  const { joints, jointFiller, bed, base } = layersFor(answers, least);
  const wheels = traffic === 'foot' ? '' : ' // herringbone holds under wheels that turn and brake';
  const thick = traffic === 'trucks' ? 'the engineer says how thick' : 'what the rules ask for here';
  return [
    ...cautions(answers),
    `area ${nameOf(answers)} {`,
    `outline rectangle ${size} // ${ALONG[near]} x out from it`,
    `traffic ${trafficOf(answers).join(', ')}`,
    `finish ${heightsFor(near, country).finish} ${words} // ${means}`,
    `paving ${unitFor(answers).name} in ${bondFor(answers)}, joints ${joints}${wheels}`,
    `bed ${bed} // thickness with the units down`,
    `base ${base} // as compacted: ${thick}`,
    ...(needsGeotextile(answers) ? ['geotextile separation-cloth // keeps stone and soil apart'] : []),
    `joints filled with ${jointFiller}`,
    '// Left and right are as seen with your back to the near side.',
    'edges {',
    ...sides(answers).map(side => edge(side, answers)),
    '}',
    '}'
  ];
}

/** What the language cannot do right yet is said where it matters. */
function cautions({ traffic }: AllAnswers): string[] {
  if (traffic !== 'trucks') return [];
  return [
    '// Trucks: a licensed engineer sets the layers, the units and the edging.',
    '// This is a start for that talk, no design.'
  ];
}

const ALONG: Readonly<Record<NearAnswer, string>> = {
  'house-door': 'along the house wall',
  'house-wall': 'along the house wall',
  garage: 'along the garage',
  'garden-wall': 'along the garden wall',
  'existing-paving': 'along the old paving',
  open: 'along the near side'
};

// ---- sides ----

interface Side {
  readonly name: string;
  readonly thing: string;
}

function sides({ near, left, far, right }: AllAnswers): Side[] {
  return [
    { name: 'near', thing: NEAR[near] },
    { name: 'left', thing: left },
    { name: 'far', thing: far },
    { name: 'right', thing: right }
  ];
}

const NEAR: Readonly<Record<NearAnswer, string>> = {
  'house-door': 'house-wall',
  'house-wall': 'house-wall',
  garage: 'concrete-slab',
  'garden-wall': 'garden-wall',
  'existing-paving': 'existing-paving',
  open: 'lawn'
};

function edge({ name, thing }: Side, answers: AllAnswers): string {
  const held = holdsPaving(thing) ? '' : `, ${edgingFor(answers).clause}`;
  return `${name} meets ${thing}${held}`;
}

function holdsPaving(thing: string): boolean {
  return SHIPPED_SIDES.some(({ name, holdsPaving }) => name === thing && holdsPaving);
}

/** Where the value of a statement stands, up to its comment. */
function valueOf(statement: string, text: string): NewJob['firstToMeasure'] {
  const lines = text.split('\n');
  const line = lines.findIndex(each => each.trimStart().startsWith(`${statement} `));
  const [, before = '', value = ''] = /^( *[\w-]+ +)(.*?) *(?:\/\/|$)/.exec(lines[line] ?? '') ?? [];
  const column = before.length + 1;
  return { line: line + 1, column, endLine: line + 1, endColumn: column + value.length };
}
