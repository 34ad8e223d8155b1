import type Fraction from 'fraction.js';
import { AstUtils } from 'langium';
import * as ast from '../../syntax/generated/ast.ts';
import type { Expression } from '../amounts.ts';
import { Context, writtenOf } from '../context.ts';
import { Names, type SpecText } from '../names.ts';
import type { Project } from '../project.ts';

/** A number of a text with its measures, as it can be written anew. Offsets, the end one past the last character. */
export interface WrittenNumber {
  readonly start: number;
  readonly end: number;
  /** Exact, in SI, with its sign. */
  readonly value: Fraction;
  /** What stands before it where it is below nought; else empty. */
  readonly minus: string;
  readonly parts: readonly WrittenPart[];
  /** What stands between its first two parts. */
  readonly between: string;
  /** The measure that it takes from its list. */
  readonly given?: string;
}

export interface WrittenPart {
  readonly number: string;
  /** What stands between number and measure. */
  readonly space: string;
  readonly measure?: string;
}

/** What stands in the place of a number and can't be written anew. */
export interface NotANumber {
  readonly written: string;
  /** `sum`: it is worked out; `lines`: it goes over several lines; `faulty`: it has an error. */
  readonly because: 'sum' | 'lines' | 'faulty';
  /** The values it is worked out from. */
  readonly names: readonly ast.Named[];
}

/** Reads numbers of the texts of a project. */
export class NumberReader {
  readonly names: Names;
  private readonly context: Context;

  constructor(project: Project) {
    this.names = new Names(project.visible);
    this.context = new Context(this.names, () => false);
  }

  read(text: SpecText, node: Expression | undefined, list?: string): WrittenNumber | NotANumber {
    if (node?.$cstNode === undefined) return { written: '', because: 'faulty', names: [] };
    const { offset: start, end } = node.$cstNode;
    const quantity = ast.isNegative(node) ? node.value : node;
    const source = text.parsed.text.slice(start, end);
    if (!ast.isQuantity(quantity) || quantity.per !== undefined || quantity.each !== undefined)
      return {
        written: writtenOf(node),
        because: 'sum',
        names: [...AstUtils.streamAst(node)].filter(ast.isNamed).filter(({ to }) => to?.$refText !== undefined)
      };
    if (source.includes('\n')) return { written: writtenOf(node), because: 'lines', names: [] };
    const value = this.context.amount(text, '', node, list)?.value;
    const parts = quantity.parts.map(part => partOf(text, part));
    const [first, second] = quantity.parts;
    if (value === undefined || parts.includes(undefined))
      return { written: writtenOf(node), because: 'faulty', names: [] };
    const given = parts.length === 1 && parts[0]!.measure === undefined ? list : undefined;
    return {
      start,
      end,
      value,
      minus: ast.isNegative(node) ? text.parsed.text.slice(start, quantity.$cstNode!.offset) : '',
      parts: parts as WrittenPart[],
      between: second === undefined ? ' ' : text.parsed.text.slice(first!.$cstNode!.end, second.$cstNode!.offset),
      ...(given === undefined ? {} : { given })
    };
  }
}

function partOf({ parsed }: SpecText, { number, measure, $cstNode: node }: ast.Part): WrittenPart | undefined {
  if (node === undefined) return undefined;
  const source = parsed.text.slice(node.offset, node.end);
  if (measure === undefined) return { number: source, space: '' };
  const behind = source.slice(number.length);
  const space = /^\s*/.exec(behind)![0];
  return { number: source.slice(0, number.length), space, measure: behind.slice(space.length) };
}
