import type { Area } from '../../job/job.ts';
import * as ast from '../../syntax/generated/ast.ts';
import type { SpecText } from '../names.ts';
import { handle, type PlaceReader, spanOfWord } from './place-reader.ts';
import type { ToldHandle, WrittenArc } from './told-handle.ts';

/** What bends a side of an area's outline, counted from nought as lowered. */
export function toldArc(
  reader: PlaceReader,
  text: SpecText,
  { name: of, outline, edges }: Pick<Area, 'name' | 'outline' | 'edges'>,
  index: number,
  shape: ast.Shape
): ToldHandle {
  const side = edges[index]?.name;
  if (side === undefined || outline[index]?.arc === undefined) return { why: `No side of ${of} is bent there.` };
  if (ast.isCircle(shape)) return circle(reader, text, shape, of);
  if (ast.isWalk(shape)) {
    const bend = shape.steps[Number(/^leg (\d+)$/.exec(side)?.[1]) - 1]?.bend;
    return bend === undefined ? measured(side) : bent(reader, text, bend, side);
  }
  if (ast.isStrip(shape))
    return {
      why: `${side} follows the line ${shape.line?.$refText ?? ''}: change that, or how wide ${of} is along it.`
    };
  if (!ast.isChain(shape)) return measured(side);
  const corners = [shape.start, ...shape.legs.map(({ to }) => to)].map(corner => corner?.$refText);
  const leg = shape.legs.find((_, at) => `${corners[at]} to ${corners[at + 1]}` === side);
  if (leg?.bend !== undefined) return bent(reader, text, leg.bend, side);
  const end = side.split(' to ').at(-1);
  const rounding = shape.rounded.find(one => one.corners.some(corner => corner?.$refText === end));
  if (rounding === undefined) return measured(side);
  return arc(text, 'rounded', reader.number(text, rounding.radius, `the radius at ${end}`));
}

function measured(side: string): ToldHandle {
  return { why: `${side} bends as it was measured: change that in what it meets.` };
}

function circle(reader: PlaceReader, text: SpecText, node: ast.Circle, of: string): ToldHandle {
  if (!node.clauses.some(({ what }) => what === 'centre'))
    return {
      why: `${of} has no centre: write \`, centre\` and a place behind its size in ${reader.line(text, node)}.`
    };
  const [bend, size] =
    node.across === undefined ? (['circle', node.radius] as const) : (['across', node.across] as const);
  return arc(text, bend, reader.number(text, size, `the size of ${of}`));
}

function bent(reader: PlaceReader, text: SpecText, bend: ast.Bend, side: string): ToldHandle {
  if (bend.what === 'through')
    return { why: `${side} runs through ${bend.via?.$refText ?? 'a point'}: drag that point.` };
  const size = reader.number(text, bend.by, `the ${bend.what === 'bowed' ? 'bow' : 'radius'} of ${side}`);
  if ('why' in size) return size;
  const word = spanOfWord(bend, 'side') ?? { start: size.end, end: size.end };
  return { text, told: { how: 'arc', arc: { bend: bend.what, size, side: { says: bend.side ?? 'out', word } } } };
}

function arc(text: SpecText, bend: WrittenArc['bend'], read: ReturnType<PlaceReader['number']>): ToldHandle {
  return handle(text, read, size => ({ how: 'arc', arc: { bend, size } }));
}
