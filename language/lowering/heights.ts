import type { Given, Height, Key } from '../job/job.ts';
import { type Datum, zOf } from '../job/heights.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, type Context, type ListEnd, NOT_NEGATIVE, writtenOf } from './context.ts';
import type { Declared, SpecText } from './names.ts';
import { endMeasure } from './points.ts';
import type { SaidFix } from './said-fix.ts';

/** Reads heights, and tells them against each other. */
export class Heights {
  private readonly context: Context;
  private readonly benchmarks: readonly Declared[];
  private readonly bases = new Map<string, Given | 'apart' | 'faulty'>();
  private readonly toldApart = new Set<string>();

  /** `benchmarks`: those of the whole job, in its order. */
  constructor(context: Context, benchmarks: readonly Declared[]) {
    this.context = context;
    this.benchmarks = benchmarks;
  }

  /** A height; `last` is the one at the end of its row, whose measure and mark count for it where it has none. */
  read(text: SpecText, key: Key, node: ast.Height | undefined, last?: ast.Height): Height | undefined {
    const { context } = this;
    if (node === undefined) {
      context.breaks(key);
      return undefined;
    }
    const list = { measure: endMeasure(last?.by as Expression | undefined), node: last };
    const marked = this.marked(node, last);
    if (marked.mark === undefined && !node.level) return this.fromNought(text, key, node, list);
    const name = marked.mark?.$refText;
    const found = context.find(text, key, marked, 'mark', name, ['benchmark'], {
      otherwise: () => this.newBenchmark(text, name!)
    });
    const by = node.level
      ? LEVEL
      : context.given(text, key, node.by as Expression | undefined, 'm', NOT_NEGATIVE, list);
    const base = found && this.baseOf(found);
    if (found === undefined || by === undefined) return undefined;
    if (base === 'apart') return this.apart(text, key, node, found.name);
    if (base === 'faulty' || base === undefined) {
      context.breaks(found.name);
      return undefined;
    }
    context.place(key, text, node);
    const value = marked.where === 'below' ? -by.value : by.value;
    return {
      benchmark: found.name,
      above: { value: value === 0 ? 0 : value, key, written: by.written },
      fromNought: false,
      ...(base === NO_BASE ? {} : { base })
    };
  }

  /** Where the mark stands: at the height itself, or at the end of its row, `A 3 B 4 in below door-sill`. */
  private marked(node: ast.Height, last: ast.Height | undefined): ast.Height {
    if (node.mark !== undefined || node.level || last?.mark === undefined) return node;
    // Where heights count from nought, one with a measure of its own is such a height.
    const isBare = endMeasure(node.by as Expression | undefined) === undefined;
    return isBare || !this.countsFromNought() ? last : node;
  }

  private countsFromNought(): boolean {
    return this.benchmarks.some(({ node }) => isAbsolute((node as ast.Benchmark).height));
  }

  /** What all heights are told from: the first benchmark whose height is known; undefined where there is none. */
  datum(): Datum | undefined {
    for (const found of this.benchmarks) {
      const base = this.baseOf(found);
      if (base === 'faulty') return undefined;
      if (base !== 'apart') return { benchmark: found.name, z: base.value, fromNought: this.countsFromNought() };
    }
    return undefined;
  }

  /** Height of a benchmark above the datum, m. */
  zOf(found: Declared): number | undefined {
    const base = this.baseOf(found);
    return typeof base === 'string' ? undefined : base.value;
  }

  /** A bare height such as `9.985 m` counts from the nought of the benchmark that has one. */
  private fromNought(text: SpecText, key: Key, node: ast.Height, list: ListEnd): Height | undefined {
    const { context } = this;
    const given = context.given(text, key, node.by as Expression | undefined, 'm', ANY, list);
    if (given === undefined) return undefined;
    for (const found of this.benchmarks) {
      if (!isAbsolute((found.node as ast.Benchmark).height)) continue;
      context.names.find(text, 'benchmark', found.name);
      const base = this.baseOf(found);
      if (base === 'faulty' || base === 'apart') return undefined;
      return { benchmark: found.name, above: given, fromNought: true, base };
    }
    const marks = this.benchmarks.map(({ name }) => name);
    const mark = marks[0] ?? 'door-sill';
    return context.fault(
      text,
      key,
      node,
      'height-without-benchmark',
      `Say what \`${given.written}\` counts from: \`${given.written} below ${mark}\`${marks.length === 0 ? `, with \`benchmark ${mark}\` in \`site\`` : ''}.`,
      { fixes: this.benchmarkFixes(text, node, marks) }
    );
  }

  /** Below or above the benchmark, and the benchmark itself where there is none yet. */
  private benchmarkFixes(text: SpecText, node: ast.Height, marks: readonly string[]): SaidFix[] {
    const { changes } = this.context;
    const mark = marks[0] ?? 'door-sill';
    const benchmark = marks.length > 0 ? [] : changes.said('site/benchmark', [`benchmark ${mark}`]);
    if (marks.length === 0 && benchmark.length === 0) return [];
    const also = marks.length > 0 ? '' : ', and the benchmark in the site';
    return ['below', 'above'].map(where => ({
      title: `Write \`${writtenOf(node)} ${where} ${mark}\`${also}`,
      does: [changes.behind(text, node, ` ${where} ${mark}`), ...benchmark]
    }));
  }

  /** In a broken text the site itself may be what can't be read. */
  private newBenchmark(text: SpecText, name: string): SaidFix[] {
    if (text.parsed.faults.length > 0) return [];
    const statement = `benchmark ${name}`;
    return [
      { title: `Write \`${statement}\` in the site`, does: this.context.changes.said('site/benchmark', [statement]) }
    ];
  }

  private apart(text: SpecText, key: Key, node: ast.Height, name: string): undefined {
    const known = this.benchmarks.find(found => typeof this.baseOf(found) !== 'string');
    const first = known?.name ?? name;
    if (this.toldApart.has(name)) {
      this.context.breaks(name);
      return undefined;
    }
    this.toldApart.add(name);
    return this.context.fault(
      text,
      key,
      node,
      'benchmarks-apart',
      `How high ${name} is against ${first} is not said. Write \`benchmark ${name} 3 in above ${first}\` with the height between them, or hang all heights from one.`
    );
  }

  /** The height of a benchmark above the datum: nought for the first where none has a height of its own. */
  private baseOf(found: Declared): Given | 'apart' | 'faulty' {
    const known = this.bases.get(found.name);
    if (known !== undefined) return known;
    // While it is being read it leads to itself.
    this.bases.set(found.name, 'apart');
    const base = this.readBase(found, found.node as ast.Benchmark);
    this.bases.set(found.name, base);
    return base;
  }

  private readBase(found: Declared, node: ast.Benchmark): Given | 'apart' | 'faulty' {
    const { context } = this;
    const key = `benchmark:${found.name}`;
    if (node.height === undefined) {
      return !this.countsFromNought() && this.benchmarks[0]?.name === found.name ? NO_BASE : 'apart';
    }
    if (isAbsolute(node.height))
      return context.given(found.text, key, node.height.by as Expression | undefined, 'm', ANY) ?? 'faulty';
    const from = this.read(found.text, key, node.height);
    if (from === undefined) return 'faulty';
    return { ...from.above, value: zOf(from) };
  }
}

function isAbsolute(height: ast.Height | undefined): height is ast.Height {
  return height !== undefined && height.mark === undefined && !height.level;
}

/** Of the first benchmark, from which the others hang. */
const NO_BASE: Given = { value: 0, written: '0' };

const LEVEL: Given = { value: 0, written: 'level' };
