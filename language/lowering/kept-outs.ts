import type { Key, KeptOut, Missing } from '../job/job.ts';
import { nameIn } from '../job/key-names.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import type { SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { saidOnce } from './said-once.ts';

/** Reads boxes and pits. */
export class KeptOuts {
  private readonly texts: readonly SpecText[];
  private readonly context: Context;
  private readonly outlines: Outlines;

  constructor(texts: readonly SpecText[], context: Context, outlines: Outlines) {
    this.texts = texts;
    this.context = context;
    this.outlines = outlines;
  }

  /** All boxes and pits, by the key of the area that each says it is in; those without numbers are added to `missing`. */
  read(missing: Missing[]): { area: Key | undefined; keptOut: KeptOut | undefined; broken: readonly string[] }[] {
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
          return [{ area, keptOut: undefined, broken: [node.name] }];
        }
        const { value, broken } = this.context.watch(() => this.keptOut(text, key, node));
        if (value === undefined) missing.push({ key, name: node.name, because: nameIn(broken[0] ?? node.name) });
        return [{ area, keptOut: value, broken: value === undefined ? [node.name] : [] }];
      })
    );
  }

  private keptOut(text: SpecText, key: Key, node: ast.KeptOut): KeptOut | undefined {
    const found = this.context.find(text, key, node, 'area', node.area?.$refText, ['area']);
    const said = saidOnce(this.context, text, key, node.items, () => 'shape');
    const item = said.get('shape');
    if (item === undefined)
      return this.context.incomplete(
        text,
        key,
        node,
        `The ${node.kind} ${node.name} has no shape. Write \`rectangle 20 x 14 in, centre (6 ft, 3 ft)\` or \`circle 10 in across, centre (6 ft, 3 ft)\`.`
      );
    const outline = this.outlines.read(text, key, item.shape);
    return (
      found && outline && { key, name: node.name, kind: node.kind, area: `area:${found.name}`, outline: outline.loop }
    );
  }
}
