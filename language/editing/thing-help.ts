import type { Bond, System } from '../job/job.ts';
import { capital } from '../lowering/amounts.ts';
import { KIND_WORDS, type Declared, type Kind } from '../lowering/names.ts';
import { isShipped, type Project } from '../lowering/project.ts';
import { amountOfLet, bondOf } from '../lowering/values.ts';
import { measureText } from '../measures/measures.ts';
import { printByMeasure } from '../measures/print.ts';
import type { ParsedText } from '../syntax/parse.ts';
import type { Statement } from '../syntax/statement-tree.ts';
import { markdownText } from '../views/markdown.ts';
import { drawBond } from './bond-drawing.ts';
import { inWords, printedIn } from './both-systems.ts';
import { declarationOf, notesAbove, sourceIn, writtenLines, type Declaration } from './declaration.ts';
import type { WordHelp } from './help/help.ts';
import { measureWords } from './measure-help.ts';
import { inOtherSystem, quantityAt, type WrittenQuantity } from './quantities.ts';
import { aboutOf, asksOf, sourceLine, sourcesOf, titleOf, weightAndSources } from './rule-help.ts';
import { loreOf } from './thing-lore.ts';

/** The longest line in a list of completions. */
export const LONGEST_LINE = 70;

/**
 * Help on a named thing: a shipped soil, kind of side, material, bond … from its own text (numbers, `according-to` as
 * source, comments), and what the trade knows of it; a thing of one's own with its declaration in short.
 */
export function thingHelp(declared: Declared, project: Project): WordHelp | undefined {
  const declaration = declarationOf(declared);
  const lore = loreOf(declared);
  if (declaration === undefined && lore === undefined) return undefined;
  const isRule = declared.kind === 'rule';
  const parts = [
    title(declared, declaration, project),
    isRule ? markdownText(titleOf(declared) ?? '') : lore?.text,
    declaration && notesAbove(declaration).map(markdownText).join(' '),
    declaration && isRule && markdownText(aboutOf(declaration) ?? ''),
    declaration && fenced(isRule ? asksOf(declaration) : writtenLines(declaration), 'paving'),
    valuesOf(declared, project)
  ];
  return { line: lore?.line ?? shortLine(declared, declaration!), text: joined(parts) };
}

/** The line alone, for a list of many things; a thing of another file that could not be read so far is told by its file. */
export function thingLine(declared: Declared, project: Project): string {
  const lore = loreOf(declared);
  if (lore !== undefined) return lore.line;
  const declaration = declarationOf(declared);
  if (declaration !== undefined) return shortLine(declared, declaration);
  const { kind, text } = declared;
  return `${capital(KIND_WORDS[kind])}, ${isShipped(project, text) ? 'as shipped' : `in ${text.file}`}`;
}

/** What a thing says only to who works it out: its value, its sizes in the other system, its drawing, its source. */
export function valuesOf(declared: Declared, project: Project): string {
  const declaration = declarationOf(declared);
  return joined([
    declared.kind === 'let' ? letValue(declared, declaration, project) : undefined,
    declared.kind === 'bond' ? drawing(declared, project) : undefined,
    declared.kind === 'rule' ? weightAndSources(declared, project) : undefined,
    declared.kind === 'rate' ? sourcesOf(declared, project) : undefined,
    declaration && otherSystem(declared, declaration),
    declaration && source(declaration)
  ]);
}

function joined(parts: readonly (string | false | undefined)[]): string {
  return parts.filter(part => part !== undefined && part !== false && part !== '').join('\n\n');
}

function title({ kind, name, text }: Declared, declaration: Declaration | undefined, project: Project): string {
  const line = declaration === undefined ? '' : `, line ${declaration.line}`;
  const where = isShipped(project, text) ? 'as shipped' : `${markdownText(text.file)}${line}`;
  return `**${markdownText(name)}**, ${KIND_WORDS[kind]}, ${where}`;
}

/** Nothing that a user wrote can end the block. */
function fenced(lines: readonly string[], language = ''): string {
  const longest = Math.max(2, ...lines.flatMap(line => (line.match(/`+/g) ?? []).map(run => run.length)));
  const fence = '`'.repeat(longest + 1);
  return [fence + language, ...lines, fence].join('\n');
}

function shortLine(declared: Declared, { parsed, statement }: Declaration): string {
  const said =
    declared.kind === 'source' ? sourceLine(declared) : RULE_KINDS.includes(declared.kind) && titleOf(declared);
  if (said) return shortened(said);
  const { kind } = declared;
  const [first] = statement.inside;
  const from = first === undefined ? statement.first + 2 : first.first;
  const end = first === undefined ? (statement.open ?? statement.end) : first.end;
  const written = words(parsed, from, end).replace(/^= /, '');
  return shortened(capital(KIND_WORDS[kind]) + (written === '' ? '' : `: ${written}`));
}

/** Kinds of things that are told by their titles. */
const RULE_KINDS: readonly Kind[] = ['rule', 'rulebook'];

function shortened(line: string): string {
  return line.length <= LONGEST_LINE ? line : `${line.slice(0, LONGEST_LINE - 1).trimEnd()}…`;
}

function letValue(declared: Declared, declaration: Declaration | undefined, project: Project): string | undefined {
  const amount = amountOfLet(declared, project);
  if (amount === undefined) return undefined;
  const { value, dimensions } = { ...amount, value: amount.value.valueOf() };
  const both = systemsOf(declaration).flatMap(system => printedIn(system, value, dimensions) ?? []);
  const alike = printByMeasure(value, measureText(dimensions), 'metric');
  return markdownText(`${capital(both.length === 0 ? alike : both.map(inWords).join(', '))}.`);
}

/** The system that a declaration is written in goes first. */
function systemsOf(declaration: Declaration | undefined): readonly System[] {
  const measure = declaration?.parsed.tokens
    .slice(declaration.statement.first, declaration.statement.end)
    .find(({ tokenType }) => tokenType.name === 'MEASURE');
  const isMetric = measure !== undefined && measureWords(measure.image)?.system === 'metric';
  return isMetric ? ['metric', 'imperial'] : ['imperial', 'metric'];
}

function drawing(declared: Declared, project: Project): string | undefined {
  const bond = bondOf(declared, project);
  if (bond === undefined) return undefined;
  const drawn = drawBond(bond);
  const turned = bond.turned && `Turned by ${bond.turned.written}${drawn === undefined ? '' : '; drawn without that'}.`;
  return joined([drawn === undefined ? UNDRAWN[bond.way] : fenced([drawn]), turned]);
}

/** Bonds by code, in words. */
const UNDRAWN: Readonly<Partial<Record<Bond['way'], string>>> = {
  hexagons: 'Hexagons, each next course shifted by half a unit.',
  rings: 'Rings round the middle, each with as many units as go round it.',
  'random-courses': 'Courses of units in an order that was drawn once, and stays.'
};

/** The sizes and weights of a declaration in the system that they are not written in. */
function otherSystem({ kind }: Declared, { parsed, statement }: Declaration): string | undefined {
  if (kind === 'let' || kind === 'area' || kind === 'rule' || kind === 'variant') return undefined;
  const parts: Pick<Statement, 'first' | 'end'>[] =
    statement.inside.length > 0 ? [...statement.inside] : [{ first: statement.first + 2, end: statement.end }];
  const told = parts.flatMap(({ first, end }) => {
    const converted = words(parsed, first, end, CONVERTED);
    return converted === words(parsed, first, end) ? [] : [converted];
  });
  return told.length === 0 ? undefined : markdownText(`In the other system, rounded: ${told.join('; ')}.`);
}

function source(declaration: Declaration): string | undefined {
  const said = sourceIn(declaration);
  return said === undefined ? undefined : `_Source: ${markdownText(said)}_`;
}

type WriteQuantity = (quantity: WrittenQuantity) => string | undefined;

const AS_WRITTEN: WriteQuantity = () => undefined;
const CONVERTED: WriteQuantity = quantity => inOtherSystem(quantity)?.text;

/** Words in one line, as written but for the quantities that `write` writes in its own way. */
function words({ tokens, text }: ParsedText, first: number, end: number, write = AS_WRITTEN): string {
  let line = '';
  for (let at = first; at < end; at++) {
    const { startOffset, endOffset, tokenType } = tokens[at]!;
    const before = tokens[at - 1];
    const gap = at === first || startOffset === before!.endOffset! + 1 ? '' : ' ';
    const quantity = tokenType.name === 'NUMBER' ? quantityAt(tokens, at) : undefined;
    const written = quantity && write(quantity);
    // The measure of a pair is part of its numbers.
    if (write === CONVERTED && tokenType.name === 'MEASURE' && before?.image === ')') continue;
    line += gap + (written ?? text.slice(startOffset, endOffset! + 1));
    if (quantity !== undefined && written !== undefined) at = quantity.end - 1;
  }
  return line;
}
