import type { Place } from '../findings/finding.ts';
import type { Key } from '../job/job.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import type { Parse } from '../syntax/parse.ts';
import { spanOf, type Statement, statementTree } from '../syntax/statement-tree.ts';
import { placeOf } from './context.ts';
import { keyOf } from './keys.ts';
import { type Declared, Names, type SpecText } from './names.ts';
import { type Project, projectWith } from './project.ts';
import { type Piece, type Splice, SplicedText } from './spliced-text.ts';
import { MOST_VARIANTS, variantsIn } from './variants.ts';

/** A job as a variant has it: the texts of the project with the variant's statements in their places. */
export interface VariantProject {
  readonly key: Key;
  readonly name: string;
  readonly project: Project;
  /** Of the variant's name. */
  readonly place: Place;
  /** Where a place in its texts was written. */
  originOf(place: Place): Origin | undefined;
}

export interface Origin {
  readonly place: Place;
  /** It stands in the variant's own block. */
  readonly isOwn: boolean;
}

/** The sound variants of a project, each as a project of its own; the texts themselves stay as they are. */
export function* variantProjects(project: Project, parse: Parse): Generator<void, VariantProject[]> {
  const found = new Map<string, VariantProject>();
  for (const declared of variantsIn(project).slice(0, MOST_VARIANTS)) {
    const { text, node, name } = declared;
    const offset = node.$cstNode?.offset;
    if (found.has(name) || offset === undefined || new ChunkIndex(text.parsed).isBroken(offset)) continue;
    found.set(name, variantProject(declared, project, parse));
    yield;
  }
  return [...found.values()];
}

function variantProject(declared: Declared, project: Project, parse: Parse): VariantProject {
  const { text, node, name } = declared;
  const block = statementTree(text.parsed).find(
    statement => spanOf(text.parsed, statement.first, statement.end).start === node.$cstNode!.offset
  )!;
  const splices = new Splices(project, text);
  for (const item of block.inside) splices.add(item);
  const instead = new Map(
    [...splices.splicedTexts()].map(([each, made]): [SpecText, { made: SplicedText; now: SpecText }] => [
      each,
      { made, now: { file: each.file, parsed: parse(made.text) } }
    ])
  );
  const byFile = new Map([...instead].map(([each, { made }]) => [each.file, made]));
  const asTheyAre = new Set(project.texts.filter(each => !instead.has(each)).map(({ file }) => file));
  const own = spanOf(text.parsed, block.first, block.end);
  return {
    key: keyOf(declared),
    name,
    project: projectWith(project, new Map([...instead].map(([each, { now }]) => [each, now]))),
    place: placeOf(text, node, 'name'),
    originOf: place => {
      if (asTheyAre.has(place.file)) return { place, isOwn: false };
      const origin = byFile.get(place.file)?.originOf(place);
      return (
        origin && {
          place: origin.place,
          isOwn: origin.of === text && origin.start >= own.start && origin.end <= own.end
        }
      );
    }
  };
}

/** Gathers what a variant puts otherwise, text by text. */
class Splices {
  readonly #project: Project;
  /** The text that the variant stands in. */
  readonly #text: SpecText;
  readonly #names: Names;
  readonly #byText = new Map<SpecText, Splice[]>();
  readonly #done = new Set<string>();

  constructor(project: Project, text: SpecText) {
    this.#project = project;
    this.#text = text;
    this.#names = new Names(project.visible);
    // A variant knows nothing of others, nor of itself.
    for (const each of project.texts)
      for (const statement of statementTree(each.parsed))
        if (statement.word === 'variant') this.#put(each, { ...this.#span(each, statement), pieces: [] });
  }

  /** Texts in which nothing changes are none of them. */
  splicedTexts(): Map<SpecText, SplicedText> {
    return new Map([...this.#byText].map(([text, splices]) => [text, new SplicedText(text, splices)]));
  }

  /** Of a thing that stands in the variant twice the first counts. */
  add(item: Statement): void {
    const name = this.#word(this.#text, item, 1);
    const id = `${item.word} ${name}`;
    if (this.#done.has(id)) return;
    this.#done.add(id);
    if (item.word === 'price') this.#price(item, name);
    else if (item.word === 'area') this.#within(item, 'area', name);
    else if (item.word === 'drain' && this.#word(this.#text, item, 2) === 'none') this.#withoutDrain(name);
    else if (item.word === 'drain') this.#within(item, 'drain', name);
  }

  /** Each statement stands instead of those of the same word; one that is not there is added. */
  #within(item: Statement, kind: 'area' | 'drain', name: string): void {
    const found = this.#declared(kind, name);
    if (found?.statement.close === undefined) return;
    const { text, statement } = found;
    const words = new Set(item.inside.map(({ word }) => word));
    for (const word of words) {
      const pieces = item.inside.filter(own => own.word === word).map(own => this.#piece(own));
      const [first, ...others] = statement.inside.filter(each => each.word === word);
      if (first === undefined) {
        const { startOffset } = text.parsed.tokens[statement.close!]!;
        this.#put(text, { start: startOffset, end: startOffset, pieces });
        continue;
      }
      this.#put(text, { ...this.#span(text, first), pieces });
      for (const other of others) this.#put(text, { ...this.#span(text, other), pieces: [] });
    }
  }

  /** What a side met that is left out still stands there, and holds the paving. */
  #withoutDrain(name: string): void {
    const found = this.#declared('drain', name);
    if (found === undefined) return;
    const { text, statement } = found;
    this.#put(text, { ...this.#span(text, statement), pieces: [`side-kind ${name} { ground closed, holds paving }`] });
  }

  /** It stands instead of all prices of the thing. */
  #price(item: Statement, name: string): void {
    const pieces = [this.#piece(item)];
    const prices = this.#project.texts.flatMap(text =>
      statementTree(text.parsed)
        .filter(statement => statement.word === 'price' && this.#word(text, statement, 1) === name)
        .map(statement => ({ text, statement }))
    );
    const { length } = this.#text.parsed.text;
    if (prices.length === 0) this.#put(this.#text, { start: length, end: length, pieces });
    prices.forEach(({ text, statement }, index) =>
      this.#put(text, { ...this.#span(text, statement), pieces: index === 0 ? pieces : [] })
    );
  }

  #declared(kind: 'area' | 'drain', name: string): { text: SpecText; statement: Statement } | undefined {
    const declared = this.#names.peek(this.#text, kind, name);
    if (declared === undefined) return undefined;
    const { text, node } = declared;
    const statement = statementTree(text.parsed).find(each => this.#span(text, each).start === node.$cstNode?.offset);
    return statement && { text, statement };
  }

  #piece(statement: Statement): Piece {
    return { of: this.#text, ...this.#span(this.#text, statement) };
  }

  #span(text: SpecText, { first, end }: Statement): { start: number; end: number } {
    return spanOf(text.parsed, first, end);
  }

  #word(text: SpecText, { first }: Statement, at: number): string {
    return text.parsed.tokens[first + at]?.image ?? '';
  }

  #put(text: SpecText, splice: Splice): void {
    const known = this.#byText.get(text);
    if (known === undefined) this.#byText.set(text, [splice]);
    else known.push(splice);
  }
}
