import type { Side } from '../geometry/index.ts';
import type { NamedLine } from '../job/heights.ts';
import type { Key } from '../job/job.ts';
import { type StationedLine, stationedLine } from '../setting-out/stationed-line.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { AstNode } from 'langium';
import type { Context } from './context.ts';
import { keyOf } from './keys.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';

/** Reads lines that areas, finishes and routes follow, and sections. */
export class PathLines {
  private readonly context: Context;
  private readonly outlines: Outlines;
  private readonly known = new Map<AstNode, { value: Side[] | undefined; broken: readonly string[] }>();

  constructor(context: Context, outlines: Outlines) {
    this.context = context;
    this.outlines = outlines;
  }

  /** The sides of a line by what declares it. */
  of(found: Declared): readonly Side[] | undefined {
    const node = found.node as ast.PathLine | ast.SectionLine;
    // Half of a line may have no points at all.
    const read = (): Side[] | undefined =>
      this.context.isBroken(found.text, node) ? undefined : this.outlines.path(found.text, keyOf(found), node.shape);
    const known = this.known.get(node) ?? this.context.watch(read);
    this.known.set(node, known);
    for (const name of known.broken) this.context.breaks(name);
    if (known.value === undefined) this.context.breaks(found.name);
    return known.value;
  }

  /** A line by name, with its stations. */
  named(
    text: SpecText,
    key: Key,
    node: AstNode,
    property: string,
    name: string | undefined
  ): StationedLine | undefined {
    const found = this.context.find(text, key, node, property, name, ['line']);
    const sides = found && this.of(found);
    if (sides === undefined) return undefined;
    const line = stationedLine(sides);
    return 'fault' in line
      ? this.context.fault(text, key, node, 'points-on-one-spot', `The line ${name!} has no length.`, { property })
      : line;
  }

  all(declared: readonly Declared[]): NamedLine[] {
    return declared.flatMap(one => {
      if (this.context.isBroken(one.text, one.node)) return [];
      const { value: sides } = this.context.watch(() => this.of(one));
      return sides === undefined ? [] : [{ key: keyOf(one), name: one.name, sides }];
    });
  }
}
