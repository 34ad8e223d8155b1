import type { Country, Inset, Key, KeptOut, Missing, System } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import * as ast from '../syntax/generated/ast.ts';
import { clausesThatDoNotFit, readBox } from './boxes.ts';
import type { Context } from './context.ts';
import type { Heights } from './heights.ts';
import type { Laying } from './laying.ts';
import type { SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { besideArea } from './own-side.ts';
import { saidOnce } from './said-once.ts';

/** A box, pit or inset, and the key of the area that it says it is in; without numbers it is broken. */
export interface ReadKeptOut {
  readonly area: Key | undefined;
  readonly keptOut?: KeptOut;
  readonly inset?: Inset;
  readonly broken: readonly string[];
}

/** Reads boxes, pits and insets. */
export class KeptOuts {
  private readonly texts: readonly SpecText[];
  private readonly context: Context;
  private readonly outlines: Outlines;
  private readonly laying: Laying;
  private readonly heights: Heights;

  constructor(texts: readonly SpecText[], context: Context, outlines: Outlines, laying: Laying, heights: Heights) {
    this.texts = texts;
    this.context = context;
    this.outlines = outlines;
    this.laying = laying;
    this.heights = heights;
  }

  /** All of them; those without numbers are added to `missing`. */
  read(missing: Missing[], country: Country | undefined): ReadKeptOut[] {
    const seen = new Set<string>();
    return this.texts.flatMap(text =>
      text.parsed.root.elements.filter(ast.isKeptOut).flatMap(node => {
        if (seen.has(node.name)) return [];
        seen.add(node.name);
        const key = this.context.place(`${node.kind}:${node.name}`, text, node, 'name');
        const isBroken = this.context.isBroken(text, node);
        // A neighbouring fault of the area's own text must not be told here: only its name is asked.
        const named = node.area?.$refText;
        const area = named === undefined ? undefined : `area:${named}`;
        if (isBroken) {
          missing.push({ key, name: node.name, because: node.name });
          return [{ area, broken: [node.name] }];
        }
        const { value, broken } = this.context.watch(() => this.keptOut(text, key, node, country));
        if (value === undefined) missing.push({ key, name: node.name, because: nameIn(broken[0] ?? node.name) });
        return [{ area, ...value, broken: value === undefined ? [node.name] : [] }];
      })
    );
  }

  private keptOut(
    text: SpecText,
    key: Key,
    node: ast.KeptOut,
    country: Country | undefined
  ): Pick<ReadKeptOut, 'keptOut' | 'inset'> | undefined {
    const found = this.context.find(text, key, node, 'area', node.area?.$refText, ['area']);
    const said = saidOnce(this.context, text, key, node.items, item =>
      ast.isOutline(item) || ast.isKeptShape(item) ? 'shape' : item.$type
    );
    clausesThatDoNotFit(this.context, text, key, node);
    const ofBox = readBox(this.context, this.heights, text, key, node, said);
    const item = said.get('shape') as ast.KeptShape | ast.Outline | undefined;
    if (item === undefined)
      return this.context.incomplete(
        text,
        key,
        node,
        `The ${node.kind} ${node.name} has no shape. Write ${SHAPES[node.kind === 'inset' ? 'inset' : 'kept-out'][this.context.system]}.`
      );
    const outline = this.outlines.read(text, key, item.shape, besideArea(this.context, this.outlines, found));
    const place = found && { key, name: node.name, area: `area:${found.name}` };
    if (node.kind !== 'inset')
      return place && outline && { keptOut: { ...place, kind: node.kind, outline: outline.loop, ...ofBox } };
    const pavingItem = said.get('Paving') as ast.Paving | undefined;
    if (pavingItem === undefined)
      return this.context.incomplete(
        text,
        key,
        node,
        `The inset ${node.name} does not say what is laid in it. Write \`paving\` with a unit and a bond.`
      );
    if (pavingItem.like !== undefined)
      return this.context.fault(
        text,
        key,
        pavingItem,
        'thing-incomplete',
        `An inset is paved in a way of its own: write \`paving\` with a unit and a bond.`
      );
    const paving = this.laying.paving(text, key, pavingItem, country);
    this.context.place(`${key}/paving`, text, pavingItem);
    const start = outline && this.laying.start(text, key, said.get('Start') as ast.Start | undefined, outline, []);
    return place && outline && paving && start && { inset: { ...place, outline: outline.loop, paving, start } };
  }
}

const SHAPES: Readonly<Record<'inset' | 'kept-out', Readonly<Record<System, string>>>> = {
  inset: {
    imperial: '`circle 6 ft across, centre (9, 5) ft` or `rectangle 6 x 4 ft, centre (9, 5) ft`',
    metric: '`circle 2 m across, centre (3, 2) m` or `rectangle 2 x 1.2 m, centre (3, 2) m`'
  },
  'kept-out': {
    imperial: '`rectangle 20 x 14 in, centre (6 ft, 3 ft)` or `circle 10 in across, centre (6 ft, 3 ft)`',
    metric: '`rectangle 500 x 350 mm, centre (2, 1) m` or `circle 250 mm across, centre (2, 1) m`'
  }
};
