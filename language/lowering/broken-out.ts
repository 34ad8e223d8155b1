import { apart } from '../geometry/bounds.ts';
import { boundsOf, type Loop } from '../geometry/index.ts';
import type { BrokenOut, Given } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import type { Declared } from './names.ts';
import type { Outlines } from './outlines.ts';
import { writing, type SaidFix } from './said-fix.ts';
import type { Usuals } from './usuals.ts';

/** What was read of a thing that is broken out: where its outline is known, areas that touch it lean on the rest. */
interface Found {
  readonly name: string;
  readonly outline?: Loop;
  readonly thing?: BrokenOut;
  readonly broken: readonly string[];
}

/** Reads old paving that is broken out. */
export class BrokenOuts {
  private readonly context: Context;
  private readonly outlines: Outlines;
  private readonly usuals: Usuals;
  private readonly declared: readonly Declared[];
  private found: readonly Found[] | undefined;

  /** `declared`: the existing things of the whole job. */
  constructor(context: Context, outlines: Outlines, usuals: Usuals, declared: readonly Declared[]) {
    this.context = context;
    this.outlines = outlines;
    this.usuals = usuals;
    this.declared = declared;
  }

  /** What is broken out that the box round an outline touches; it may lie in several areas. */
  touching(outline: Loop): BrokenOut[] {
    return this.all().flatMap(found => {
      if (found.outline === undefined || apart(boundsOf(found.outline), boundsOf(outline), 0)) return [];
      for (const name of found.broken) this.context.breaks(name);
      return found.thing ?? [];
    });
  }

  /** Each is read once, and its faults told once. */
  all(): readonly Found[] {
    const first = new Map(this.declared.map(one => [one.name, one]).reverse() as [string, Declared][]);
    this.found ??= this.declared.flatMap(declared => {
      if (first.get(declared.name) !== declared) return [];
      const { items } = declared.node as ast.Existing;
      if (this.context.isBroken(declared.text, declared.node)) return [];
      const { value, broken } = this.context.watch(() => this.read(declared, items));
      return value === undefined ? [] : [{ ...value, broken: value.thing === undefined ? broken : [] }];
    });
    return this.found;
  }

  private read(declared: Declared, items: readonly ast.ExistingItem[]): Omit<Found, 'broken'> | undefined {
    const { context } = this;
    const { text, name, node } = declared;
    const key = `existing:${name}`;
    const outlineNode = items.find(ast.isOutline);
    const measure = (what: ast.ExistingMeasure['what'], wanted: 'm' | 'kg/m3'): Given | undefined => {
      const item = items.filter(ast.isExistingMeasure).find(one => one.what === what);
      return item && context.given(text, `${key}/${what}`, item.value as Expression | undefined, wanted);
    };
    const outline = outlineNode && this.outlines.read(text, `${key}/outline`, outlineNode.shape)?.loop;
    const thickness = measure('thickness', 'm');
    const said = measure('density', 'kg/m3');
    const brokenOut = items.find(ast.isBrokenOut);
    if (brokenOut === undefined) return undefined;
    // Nothing need name what goes to the tip.
    context.names.find(text, 'existing', name);
    const isSaid = (what: ast.ExistingMeasure['what']): boolean =>
      items.some(item => ast.isExistingMeasure(item) && item.what === what);
    if (outlineNode === undefined || !isSaid('thickness')) {
      const missing = [
        ...(outlineNode === undefined ? [`outline rectangle ${this.sizes[0]}`] : []),
        ...(isSaid('thickness') ? [] : [`thickness ${this.sizes[1]}`])
      ];
      const fixes = outlineNode === undefined ? [] : this.thicknessFixes(declared, brokenOut);
      context.incomplete(
        text,
        key,
        node,
        `What is broken out is counted by its outline and thickness. Write ${missing.map(words => `\`${words}\``).join(' and ')}${outlineNode === undefined ? `; until then ${name} is left out` : ''}.`,
        fixes
      );
      return { name, ...(outline === undefined ? {} : { outline }) };
    }
    const density = isSaid('density') ? said : this.usuals.of('old-paving', undefined);
    context.place(key, text, node, 'name');
    if (outline === undefined || thickness === undefined || density === undefined)
      return { name, ...(outline === undefined ? {} : { outline }) };
    return { name, outline, thing: { key, name, outline, thickness, density } };
  }

  private get sizes(): readonly [size: string, thickness: string] {
    return this.context.system === 'imperial' ? ['8 x 10 ft', '4 in'] : ['2.4 x 3 m', '100 mm'];
  }

  /** As thick as plain concrete is laid for a walk (common practice): to be measured. */
  private thicknessFixes({ text, node, name }: Declared, brokenOut: ast.BrokenOut): SaidFix[] {
    const { changes } = this.context;
    const key = `existing:${name}/thickness`;
    changes.gap(key, text, node as ast.Existing, (node as ast.Existing).items.find(ast.isOutline) ?? brokenOut, {
      commas: true
    });
    const statement = `thickness ${this.sizes[1]}`;
    return [{ ...writing(statement), does: changes.said(key, [statement]) }];
  }
}
