import { distance, type Point, middleOf } from '../geometry/index.ts';
import type { Drain, Pipe } from '../job/heights.ts';
import type { Key, Missing } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import { readEach, type Each } from './each-thing.ts';
import type { Declared, SpecText } from './names.ts';
import type { Outlines } from './outlines.ts';
import { besideArea } from './own-side.ts';
import type { Points } from './points.ts';
import { saidOnce } from './said-once.ts';

/** What runs in the ground. */
export const CARRIED = [
  'gas',
  'power',
  'water',
  'irrigation',
  'drainage',
  'sewer',
  'telecoms',
  'lighting',
  'unknown'
] as const;

/** Ends nearer to each other than this lie on one spot, m. */
const ONE_SPOT = 0.0005;

/** Reads pipes and cables that are there already. */
export class Pipes {
  private readonly context: Context;
  private readonly points: Points;
  private readonly outlines: Outlines;
  private readonly drains: readonly Drain[];

  /** `drains`: those of the job that could be read. */
  constructor(context: Context, points: Points, outlines: Outlines, drains: readonly Drain[]) {
    this.context = context;
    this.points = points;
    this.outlines = outlines;
    this.drains = drains;
  }

  read(texts: readonly SpecText[], missing: Missing[]): Each<Pipe>[] {
    return readEach(this.context, texts, 'pipe', missing, (declared, key) => this.pipe(declared, key));
  }

  private pipe({ text, node: declaration, name }: Declared, key: Key): Pipe | undefined {
    const { context } = this;
    const node = declaration as ast.Pipe;
    if (node.area !== undefined) context.find(text, key, node, 'area', node.area.$refText, ['area']);
    const said = saidOnce(context, text, key, node.items, item => item.$type);
    const run = said.get('PipeRun') as ast.PipeRun | undefined;
    const line =
      run === undefined
        ? context.incomplete(
            text,
            key,
            node,
            `The pipe ${name} does not say where it runs. Write \`from A to B\` with points, boxes or drains.`
          )
        : this.line(text, key, run);
    const depthItem = said.get('PipeDepth') as ast.PipeDepth | undefined;
    const depth = depthItem && context.given(text, `${key}/depth`, depthItem.depth as Expression | undefined, 'm');
    const carriesItem = said.get('PipeCarries') as ast.PipeCarries | undefined;
    const carries = carriesItem && context.word(text, key, carriesItem, 'what', carriesItem.what, CARRIED);
    if (line === undefined || (depthItem !== undefined && depth === undefined)) return undefined;
    return {
      key,
      name,
      line,
      ...(depth === undefined ? {} : { depth }),
      about: depthItem?.about ?? false,
      proven: depthItem?.proven ?? false,
      ...(carries === undefined ? {} : { carries })
    };
  }

  private line(text: SpecText, key: Key, run: ast.PipeRun): Pipe['line'] | undefined {
    this.context.place(`${key}/line`, text, run);
    const ends = run.ends.map((end, index) => {
      const name = end?.$refText;
      const found = this.context.find(text, key, run, ['ends', index], name, ['point', 'kept-out', 'drain']);
      const at = found && this.placeOf(found);
      return at && { name: name!, at };
    });
    if (ends.includes(undefined)) return undefined;
    const line = ends.map(end => end!);
    const [same] = line.slice(1).flatMap((to, index) => (distance(line[index]!.at, to.at) <= ONE_SPOT ? [index] : []));
    if (same === undefined) return line;
    return this.context.fault(
      text,
      key,
      run,
      'points-on-one-spot',
      `${line[same]!.name} and ${line[same + 1]!.name} lie on one spot: no pipe runs between them.`,
      { property: ['ends', same, same + 1] }
    );
  }

  /** A point; the middle of a box; the outlet of a drain, else its middle. */
  private placeOf(found: Declared): Point | undefined {
    if (found.kind === 'point') return this.points.of(found);
    if (this.context.isBroken(found.text, found.node)) return undefined;
    if (found.kind === 'kept-out') return this.middleOfKeptOut(found);
    return this.placeOfDrain(found.name);
  }

  private middleOfKeptOut({ text, name, node }: Declared): Point | undefined {
    const { kind, items, area } = node as ast.KeptOut;
    const item = items.find(one => ast.isKeptShape(one) || ast.isOutline(one));
    return this.middle(text, `${kind}:${name}`, item?.shape, area?.$refText);
  }

  private placeOfDrain(name: string): Point | undefined {
    const drain = this.drains.find(one => one.name === name);
    if (drain === undefined) this.context.breaks(name);
    return drain && (drain.outlet?.at ?? middleOf(drain.outline));
  }

  private middle(text: SpecText, key: Key, shape: ast.Shape | undefined, area: string | undefined): Point | undefined {
    const found = area === undefined ? undefined : this.context.names.find(text, 'area', area);
    const outline = this.outlines.read(text, key, shape, besideArea(this.context, this.outlines, found));
    return outline && middleOf(outline.loop);
  }
}
