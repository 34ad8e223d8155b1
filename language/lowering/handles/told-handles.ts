import type { Area, Job, Key } from '../../job/job.ts';
import * as ast from '../../syntax/generated/ast.ts';
import { ChunkIndex } from '../../syntax/chunk-index.ts';
import { writtenOf } from '../context.ts';
import { type Declared, type Kind, namesOf, type SpecText } from '../names.ts';
import type { Project } from '../project.ts';
import { toldArc } from './arc-reader.ts';
import { handle, PlaceReader } from './place-reader.ts';
import type { ToldHandle } from './told-handle.ts';

/** Leads the handles of a job to the texts that tell where they lie; `job` as it was lowered from these texts. */
export class ToldHandles {
  private readonly project: Project;
  private readonly areas: ReadonlyMap<Key, Area>;
  private readonly reader: PlaceReader;
  private readonly chunks = new Map<SpecText, ChunkIndex>();

  constructor(project: Project, job: Job | undefined) {
    this.project = project;
    this.areas = new Map(job?.areas.map(area => [area.key, area]));
    this.reader = new PlaceReader(project);
  }

  /** Of a point, box, pit, inset or drain by its key; `area:terrace/start`, `/corner-1`, `/side-3/arc` of an area. */
  told(thing: Key): ToldHandle {
    const [, kind, name, part] = THING.exec(thing) ?? [];
    const declared = kind === undefined ? undefined : this.declared(KINDS[kind as keyof typeof KINDS], name!);
    if (declared === undefined || (part !== undefined) !== (kind === 'area')) return { why: NOT_THERE };
    const error = this.errorIn(declared);
    if (error !== undefined) return { why: `Mend the error in ${error} first.` };
    const { text, node } = declared;
    if (ast.isMark(node)) return this.point(text, node);
    if (ast.isKeptOut(node)) return this.keptOut(text, node);
    if (ast.isDrain(node)) return this.drain(text, node);
    return this.ofArea(text, node as ast.Area, part!);
  }

  private declared(kind: Kind, name: string): Declared | undefined {
    for (const text of this.project.texts) {
      const found = namesOf(text).byName.get(`${kind} ${name}`);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  /** The line of a fault of the text that has broken a statement. */
  private errorIn({ text, node }: Declared): string | undefined {
    const chunks = this.chunks.get(text) ?? new ChunkIndex(text.parsed);
    this.chunks.set(text, chunks);
    const offset = node.$cstNode?.offset ?? 0;
    if (!chunks.isBroken(offset)) return undefined;
    const chunk = chunks.at(offset);
    const fault = text.parsed.faults.find(one => chunks.at(one.offset) === chunk);
    return this.reader.lineAt(text, fault?.offset ?? offset);
  }

  private point(text: SpecText, node: ast.Mark): ToldHandle {
    const { name, halfway, clauses } = node;
    if (halfway !== undefined) return { why: `${name} lies halfway between ${ends(halfway)}: drag these.` };
    if (clauses.length > 0)
      return { why: `${name} is found by its tapes: change what they read in ${this.reader.line(text, node)}.` };
    return this.reader.spot(text, node.at, node.aside, name, `point:${name}`);
  }

  private keptOut(text: SpecText, node: ast.KeptOut): ToldHandle {
    const shape = node.items.find(item => ast.isOutline(item) || ast.isKeptShape(item))?.shape;
    return this.whole(text, node.name, `${node.kind}:${node.name}`, shape, node);
  }

  private drain(text: SpecText, node: ast.Drain): ToldHandle {
    const { name } = node;
    const channel = node.items.find(ast.isChannel);
    if (channel !== undefined) return { why: `${name} lies along ${writtenOf(channel.line)}: drag these points.` };
    return this.whole(text, name, `drain:${name}`, node.items.find(ast.isGully)?.shape, node);
  }

  /** A shape that is moved as a whole. */
  private whole(
    text: SpecText,
    name: string,
    key: Key,
    shape: ast.Shape | undefined,
    node: ast.KeptOut | ast.Drain
  ): ToldHandle {
    if (shape === undefined) return { why: `${name} has no shape: write one in ${this.reader.line(text, node)}.` };
    if (ast.isChain(shape)) return { why: `The corners of ${name} are points: drag these.` };
    if (ast.isStrip(shape)) return { why: `${name} lies along the line ${shape.line?.$refText ?? ''}: change that.` };
    if (ast.isWalk(shape))
      return handle(text, this.reader.pair(text, shape.start, name), pair => ({ how: 'pair', pair }));
    const place = placeOfShape(shape);
    if (place === undefined)
      return {
        why: `The place of ${name} is not said: write \`, centre\` and a place behind its size in ${this.reader.line(text, shape)}.`
      };
    return this.reader.spot(text, place.at, place.aside, name, `${key}/${place.what}`);
  }

  // ---- areas ----

  private ofArea(text: SpecText, node: ast.Area, part: string): ToldHandle {
    if (part === 'start') return this.start(text, node);
    const shape = node.items.find(ast.isOutline)?.shape;
    const area = this.areas.get(`area:${node.name}`);
    if (shape === undefined || area === undefined)
      return { why: `${node.name} can't be worked out: mend what is wrong with it first.` };
    const [, corner, side] = /^(?:corner-(\d+)|side-(\d+)\/arc)$/.exec(part) ?? [];
    if (side !== undefined) return toldArc(this.reader, text, area, Number(side) - 1, shape);
    return corner === undefined ? { why: NOT_THERE } : this.corner(text, node, shape, Number(corner));
  }

  /** Of the corners that no point stands for only the one can be moved that the text gives a place. */
  private corner(text: SpecText, { name }: ast.Area, shape: ast.Shape, number: number): ToldHandle {
    const line = this.reader.line(text, shape);
    if (ast.isChain(shape))
      return { why: `This corner of ${name} follows from what is written of its sides in ${line}: change that.` };
    if (ast.isWalk(shape))
      return number === 1
        ? handle(text, this.reader.pair(text, shape.start, name), pair => ({ how: 'pair', pair }))
        : { why: `This corner of ${name} follows from the lengths of its legs: change these in ${line}.` };
    if (ast.isStrip(shape))
      return { why: `${name} lies along the line ${shape.line?.$refText ?? ''}: change that, or how wide it is.` };
    if (ast.isCircle(shape)) return { why: `${name} is a circle and has no corners: drag its edge.` };
    const place = placeOfShape(shape);
    const isTurned = shape.clauses.some(({ what }) => what === 'turned');
    if (number === 1 && place?.what === 'corner' && !isTurned)
      return this.reader.spot(text, place.at, place.aside, name, `area:${name}/outline/corner`);
    const said = place === undefined ? 'size' : 'size and place';
    return {
      why: `This corner of ${name} follows from its ${said} in ${line}: change that, or write the rectangle as four points.`
    };
  }

  private start(text: SpecText, node: ast.Area): ToldHandle {
    const { name } = node;
    const start = node.items.find(ast.isStart);
    if (start === undefined)
      return {
        why: `Where laying begins in ${name} is not said: write \`start shifted (0, 0)\`, and it can be dragged.`
      };
    const line = this.reader.line(text, start);
    const bond = this.areas.get(`area:${name}`)?.paving?.bond.way;
    if (bond === 'rings') {
      const from = start.clauses.find(({ at }) => at)?.end?.$refText;
      return {
        why:
          from === undefined
            ? `The rings of ${name} lie about its middle: write \`from\` and a point in ${line}, and drag that point.`
            : `The rings of ${name} lie about ${from}: drag that point.`
      };
    }
    const by = start.clauses.find(({ shifted }) => shifted)?.by;
    if (by === undefined) {
      const words = start.clauses.map(writtenOf).join(', ');
      return {
        why: `Where laying begins in ${name} follows from \`${words}\`: write \`, shifted (0, 0)\` behind it in ${line}, and it can be dragged.`
      };
    }
    return handle(text, this.reader.pair(text, by, `the start of ${name}`), pair => ({ how: 'start', pair }));
  }
}

/** Kinds of names by the kinds of keys. */
const KINDS = {
  point: 'point',
  box: 'kept-out',
  pit: 'kept-out',
  inset: 'kept-out',
  drain: 'drain',
  area: 'area'
} as const satisfies Readonly<Record<string, Kind>>;

const THING = /^(point|box|pit|inset|drain|area):([^/]+)(?:\/(.+))?$/;

const NOT_THERE = 'The text has no such thing any more.';

function ends({ from, to }: ast.PointLine): string {
  return `${from?.$refText ?? ''} and ${to?.$refText ?? ''}`;
}

/** What says where a rectangle or a circle lies. */
function placeOfShape(
  shape: ast.Rectangle | ast.Circle
):
  | { readonly at: ast.Spot | undefined; readonly what: 'corner' | 'centre'; readonly aside: ast.Aside | undefined }
  | undefined {
  const said = shape.clauses.find(({ what }) => what === 'centre' || (what === 'corner' && ast.isRectangle(shape)));
  const aside = shape.clauses.find(clause => clause.aside !== undefined)?.aside;
  return said && { at: said.at, what: said.what as 'corner' | 'centre', aside };
}
