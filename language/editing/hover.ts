import { LineStarts } from '../syntax/line-starts.ts';
import { worldAt } from '../lowering/examples.ts';
import { KIND_WORDS, Names, type Declared, type Kind } from '../lowering/names.ts';
import { type Occurrence, occurrencesWithin } from '../lowering/occurrences.ts';
import type { Evaluation, Look } from '../paving.ts';
import type { ShownFigures } from '../job-figures.ts';
import type { VariantEvaluation } from '../variants.ts';
import { figuresAt, figuresOf, variantBeside } from '../views/figures-hover.ts';
import { numbersAt, type Hover } from '../views/hover.ts';
import { markdownText } from '../views/markdown.ts';
import { inWords } from './both-systems.ts';
import { measureHelp } from './measure-help.ts';
import { helpOnRuleWord } from './rule-members.ts';
import { inOtherSystem, quantityAt } from './quantities.ts';
import { thingHelp, valuesOf } from './thing-help.ts';
import { wordAt, type WordAt } from './word-at.ts';
import { wordHelp } from './word-help.ts';

/** What a file comes to, by itself or in a job that uses it, and its name there. */
export interface Worked {
  readonly evaluation: Evaluation;
  readonly file: string;
  /** What its job needs, costs and takes. */
  readonly figures?: ShownFigures;
  /** The same of each of its variants, where the name of one is asked about. */
  readonly variants?: readonly VariantEvaluation[];
}

/**
 * What is told of the place at an offset: the numbers of the thing there, as far as they are worked out, and help on the
 * very word.
 */
export function hoverAt(look: Look, offset: number, worked?: Worked): Hover | undefined {
  const { text } = look;
  const lines = new LineStarts(text.parsed.text);
  const [line, column] = [lines.lineOf(offset) + 1, lines.columnOf(offset) + 1];
  const numbers = worked && numbersAt(worked.evaluation, worked.file, line, column);
  const word = wordAt(text, offset);
  const seen = worldAt(look, offset);
  const figures = worked?.figures && figuresAt(worked.evaluation, worked.figures, worked.file, line, column);
  // Nothing in an example of a rule is the job's.
  const named = worked && word && seen.text === text ? figuresOfName(word, look, worked) : undefined;
  const told = word && helpOn(word, look, seen);
  const parts = [numbers?.markdown, named ?? figures?.markdown, told].filter(part => part !== undefined && part !== '');
  const place = word?.place ?? numbers?.place ?? figures?.place;
  return parts.length === 0 || place === undefined ? undefined : { place, markdown: parts.join('\n\n---\n\n') };
}

/** Whether a variant's name stands at an offset: its numbers are worked out only where they are asked for. */
export function isVariantAt({ text, project }: Look, offset: number): boolean {
  return nameAt(offset, { text, project })?.declared?.kind === 'variant';
}

function nameAt(offset: number, { text, project }: Look): Occurrence | undefined {
  return occurrencesWithin(text, project, { start: offset, end: offset }).find(
    ({ start, end }) => start <= offset && offset < end
  );
}

function figuresOfName({ offset }: WordAt, look: Look, { evaluation, figures, variants }: Worked): string | undefined {
  const found = nameAt(offset, look);
  if (found?.declared === undefined || figures === undefined) return undefined;
  const { kind, name } = found.declared;
  if (kind === 'unit' || kind === 'material' || kind === 'supplier') return figuresOf(kind, name, figures, found.place);
  const variant = kind === 'variant' ? variants?.find(one => one.name === name) : undefined;
  return variant && variantBeside(variant, evaluation, figures);
}

/** `look` is what the word sees: in an example of a rule the example. */
function helpOn(word: WordAt, { text }: Look, look: Look): string | undefined {
  if (word.type === 'NUMBER' || word.type === 'MEASURE') return helpOnQuantity(word, look);
  return (
    helpOnName(word, look) ??
    (word.at && wordHelp(word.word, word.at)?.text) ??
    (word.type === 'ID' ? helpOnRuleWord(text.parsed, word.index)?.text : undefined) ??
    helpOnLooseName(word, look)
  );
}

function helpOnQuantity({ index, type, word }: WordAt, { text }: Look): string {
  const quantity = quantityAt(text.parsed.tokens, index);
  const other = quantity && inOtherSystem(quantity);
  const value = other && `**${markdownText(quantity.written)}** is ${markdownText(inWords(other))}.`;
  const measure = type === 'MEASURE' ? measureHelp(word)?.text : undefined;
  return [value, measure].filter(part => part !== undefined).join('\n\n');
}

/** Where a thing is declared its declaration need not be shown again. */
function helpOnName({ offset }: WordAt, { text, project }: Look): string | undefined {
  const found = occurrencesWithin(text, project, { start: offset, end: offset }).find(({ start }) => start === offset);
  if (found?.declared === undefined) return undefined;
  return found.isDeclaration ? valuesOf(found.declared, project) : thingHelp(found.declared, project)?.text;
}

/** In a broken text a name may have lost its statement: whatever goes by it is told. */
function helpOnLooseName({ type, word }: WordAt, { text, project }: Look): string | undefined {
  if (type !== 'ID') return undefined;
  const names = new Names(project.visible);
  const declared = (Object.keys(KIND_WORDS) as Kind[])
    .map(kind => names.peek(text, kind, word))
    .find((found): found is Declared => found !== undefined);
  return declared && thingHelp(declared, project)?.text;
}
