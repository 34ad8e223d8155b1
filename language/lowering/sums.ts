import type Fraction from 'fraction.js';
import { AstUtils, type AstNode } from 'langium';
import type { System } from '../job/job.ts';
import { measureText } from '../measures/measures.ts';
import * as ast from '../syntax/generated/ast.ts';
import { METRIC, TAPE, type Amount, type Expression } from './amounts.ts';
import { Context } from './context.ts';
import { Names, type SpecText } from './names.ts';
import { endMeasure } from './points.ts';
import type { Project } from './project.ts';
import { lastMeasure } from './things.ts';

/** A sum, or a part of one, as it stands in a text. Offsets, the end one past the last character. */
export interface WrittenSum {
  readonly start: number;
  readonly end: number;
  readonly form: 'quantity' | 'name' | 'brackets' | 'negative' | 'times' | 'plus';
  /** The measure that is written in it and counts for all of it: of `12 in`, of `(2 + 3) m`, not of `2 ft 6 in`. */
  readonly measure?: string;
  /** The measure that it, or a number in it, takes from the list or the brackets around it. */
  readonly given?: string;
  /** What it comes to; absent where it is faulty. */
  readonly amount?: WrittenAmount;
  /** The value that a name stands for. */
  readonly name?: string;
  /** The system of the length measure that counts for it. */
  readonly system?: System;
  readonly inside: readonly WrittenSum[];
}

/** Exact, in the SI measure `measure`, which is empty for shares, slopes and counts; `bare`: no measure was written in it. */
export interface WrittenAmount {
  readonly value: Fraction;
  readonly measure: string;
  readonly bare: boolean;
}

/** Sums that stand together: one alone, a size, or the two of a place; its range takes in the brackets of a place. */
export interface SumList {
  readonly start: number;
  readonly end: number;
  readonly form: 'alone' | 'size' | 'pair';
  /** The statement or clause that it stands in, and what it says there, as the grammar names them. */
  readonly holder: string;
  readonly says: string;
  /** The name of what is declared, where the holder declares something. */
  readonly declares?: string;
  /** The measure at its end, which counts for lone numbers before it. */
  readonly measure?: string;
  readonly sums: readonly WrittenSum[];
}

/** Every sum of a text in its order, but for those in rules; of broken statements as far as they could be read. */
export function sumsIn(text: SpecText, project: Project): SumList[] {
  const reader = new SumReader(text, new Context(new Names(project.visible), () => false));
  const elements = text.parsed.root.elements.filter(element => !ast.isRule(element));
  return elements
    .flatMap(element => [...AstUtils.streamAst(element)])
    .flatMap(node => reader.list(node) ?? [])
    .sort((left, right) => left.start - right.start);
}

class SumReader {
  private readonly text: SpecText;
  private readonly context: Context;

  constructor(text: SpecText, context: Context) {
    this.text = text;
    this.context = context;
  }

  list(node: AstNode): SumList | undefined {
    const { $container: holder } = node;
    if (holder === undefined || node.$cstNode === undefined) return undefined;
    if (ast.isSize(node)) return this.listOf(node, 'size', node.sides, lastMeasure(node.sides.at(-1) as Expression));
    if (ast.isPair(node))
      return this.listOf(node, 'pair', [node.x, node.y], node.measure ?? endMeasure(node.y as Expression));
    if (!isExpression(node) || isExpression(holder) || ast.isSize(holder) || ast.isPair(holder)) return undefined;
    return this.listOf(node, 'alone', [node], undefined);
  }

  private listOf(
    node: AstNode,
    form: SumList['form'],
    all: readonly (AstNode | undefined)[],
    measure: string | undefined
  ): SumList | undefined {
    const sums = all.map(each => this.sum(each as Expression | undefined, measure));
    if (sums.some(sum => sum === undefined)) return undefined;
    const holder = node.$container!;
    const name = (holder as { name?: unknown }).name;
    return {
      start: node.$cstNode!.offset,
      end: node.$cstNode!.end,
      form,
      holder: holder.$type,
      says: saysOf(holder, node),
      ...(typeof name === 'string' ? { declares: name } : {}),
      ...(measure === undefined ? {} : { measure }),
      sums: sums as WrittenSum[]
    };
  }

  private sum(node: Expression | undefined, given: string | undefined): WrittenSum | undefined {
    if (node?.$cstNode === undefined) return undefined;
    const measure = ast.isGroup(node) ? node.measure : ast.isQuantity(node) ? loneMeasure(node) : undefined;
    const inside = parts(node, given).flatMap(([part, theirs]) => this.sum(part, theirs) ?? []);
    const amount = this.context.amount(this.text, 'sum', node, given);
    const taken = takesMeasure(node, inside, amount) ? given : undefined;
    const system = systemOf(node, taken);
    return {
      start: node.$cstNode.offset,
      end: node.$cstNode.end,
      form: formOf(node),
      ...(measure === undefined ? {} : { measure }),
      ...(taken === undefined ? {} : { given: taken }),
      ...(amount === undefined
        ? {}
        : { amount: { value: amount.value, measure: measureText(amount.dimensions), bare: amount.bare } }),
      ...(ast.isNamed(node) ? { name: node.to.$refText } : {}),
      ...(system === undefined ? {} : { system }),
      inside
    };
  }
}

/** The sums that a sum is made of, each with the measure that it gives to a lone number. */
function parts(node: Expression, given: string | undefined): [Expression | undefined, string | undefined][] {
  if (ast.isGroup(node)) return [[node.value as Expression | undefined, node.measure ?? given]];
  if (ast.isNegative(node)) return [[node.value as Expression | undefined, given]];
  if (!ast.isSum(node)) return [];
  const theirs = multiplies(node) ? undefined : given;
  return [
    [node.left as Expression | undefined, theirs],
    [node.right as Expression | undefined, theirs]
  ];
}

function formOf(node: Expression): WrittenSum['form'] {
  if (ast.isQuantity(node)) return 'quantity';
  if (ast.isNamed(node)) return 'name';
  if (ast.isGroup(node)) return 'brackets';
  if (ast.isNegative(node)) return 'negative';
  return multiplies(node) ? 'times' : 'plus';
}

function multiplies({ operator }: ast.Sum): boolean {
  return operator === '*' || operator === '/';
}

function isExpression(node: AstNode): node is Expression {
  return ast.isSum(node) || ast.isGroup(node) || ast.isNamed(node) || ast.isNegative(node) || ast.isQuantity(node);
}

function loneMeasure({ parts: [part, ...more] }: ast.Quantity): string | undefined {
  return more.length === 0 ? part?.measure : undefined;
}

/** A lone number takes it; of a product without any measure what it comes to; else what stands inside. */
function takesMeasure(node: Expression, inside: readonly WrittenSum[], amount: Amount | undefined): boolean {
  if (ast.isQuantity(node)) return node.parts.length === 1 && node.parts[0]!.measure === undefined;
  if (ast.isSum(node) && multiplies(node)) return amount?.bare === false && inside.every(part => part.amount?.bare);
  return !(ast.isGroup(node) && node.measure !== undefined) && inside.some(part => part.given !== undefined);
}

/** Of a rate such as `1/4 in per ft` the measure is none of the two. */
function systemOf(node: Expression, taken: string | undefined): System | undefined {
  const measured = ast.isQuantity(node) ? node.parts.at(-1)?.measure : ast.isGroup(node) ? node.measure : undefined;
  const measure = measured ?? taken;
  if (measure === undefined || (ast.isQuantity(node) && node.per !== undefined)) return undefined;
  if (METRIC.test(measure)) return 'metric';
  return TAPE.test(measure) ? 'imperial' : undefined;
}

function saysOf(holder: AstNode, node: AstNode): string {
  const { what } = holder as { what?: unknown };
  return typeof what === 'string' ? what : (node.$containerProperty ?? '');
}
