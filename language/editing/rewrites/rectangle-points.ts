import { RECTANGLE_SIDES } from '../../lowering/outlines.ts';
import { sumsIn, type SumList } from '../../lowering/sums.ts';
import type { Look } from '../../paving.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import { meetsOf, spanOf, type Statement } from '../../syntax/statement-tree.ts';
import { beginsLine, indentAt, lineBreakOf, type Span } from '../../syntax/text-edit.ts';
import { FreeNames } from './names.ts';
import { isBroken, linesBefore, topStatementAt } from './places.ts';
import { cornersOf, type RectangleSums } from './rectangle-corners.ts';
import { covers, rewrite, touches, type Edit, type Rewrite } from './rewrite.ts';
import { onOneLine } from './written.ts';

/** The outline of an area that is a rectangle, from point to point: a corner can then be moved, or one more be set. */
export function rectangleToPoints({ text, project }: Look, at: Span): Rewrite[] {
  const { parsed } = text;
  const area = topStatementAt(parsed, at.start);
  if (area?.word !== 'area' || isBroken(parsed, area)) return [];
  const outlines = area.inside.filter(({ word }) => word === 'outline');
  const [outline] = outlines;
  if (outline === undefined || outlines.length > 1 || !covers(spanOf(parsed, outline.first, outline.end), at))
    return [];
  const shape = parsed.tokens[outline.first + 1];
  if (shape?.tokenType.name !== 'rectangle') return [];
  const span: Span = { start: shape.startOffset, end: spanOf(parsed, outline.first, outline.end).end };
  if (onOneLine(parsed, span) === undefined) return [];
  const sums = rectangleSums(sumsIn(text, project), span);
  const corners = sums && cornersOf(parsed, sums);
  if (sums === undefined || corners === undefined) return [];
  const names = new FreeNames(project).inARow('P', RECTANGLE_SIDES.length);
  const edges = edgesFromPoint(parsed, area, names);
  if (edges === undefined) return [];
  const width = Math.max(...names.map(({ length }) => length));
  const points = names.map((name, index) => `point ${name.padEnd(width)} at ${corners.written[index]!}`);
  const title = `Write the rectangle as four points${sums.turned === undefined ? '' : ', to 0.01 mm'}`;
  return [
    rewrite(text, { title, kind: 'rewrite', keeps: { within: corners.within, but: ['name'] } }, [
      linesBefore(text, area, points),
      { ...span, text: names.join(' to ') },
      ...edges
    ])
  ];
}

function rectangleSums(lists: readonly SumList[], span: Span): RectangleSums | undefined {
  const inside = lists.filter(list => touches(span, list));
  const size = inside.find(({ holder }) => holder === 'Rectangle');
  if (size?.sums.length !== 2 || inside.some(list => list.sums.some(({ amount }) => amount === undefined)))
    return undefined;
  const clause = (word: string): SumList | undefined =>
    inside.find(list => list.holder === 'PlaceClause' && list.says === word);
  const [corner, centre, turned] = [clause('corner'), clause('centre'), clause('turned')];
  return {
    size,
    ...(corner === undefined ? {} : { corner }),
    ...(centre === undefined ? {} : { centre }),
    ...(turned === undefined ? {} : { turned })
  };
}

// ---- the sides by their new names ----

/** New beginnings for the lines of the edges; undefined where one can't be read. */
function edgesFromPoint(parsed: ParsedText, area: Statement, names: readonly string[]): Edit[] | undefined {
  const blocks = area.inside.filter(({ word }) => word === 'edges');
  if (blocks.length > 1) return undefined;
  const lines = (blocks[0]?.inside ?? []).map(line => edgeLine(parsed, line, names));
  if (lines.some(line => line === undefined)) return undefined;
  const width = Math.max(0, ...lines.flatMap(line => line!.heads.map(({ length }) => length)));
  return lines.map(line => {
    const { heads, tail, span, indent } = line!;
    const text = heads.map(head => `${head.padEnd(width)}  ${tail}`).join(lineBreakOf(parsed.text) + indent);
    return { ...span, text };
  });
}

interface EdgeLine {
  /** The sides that it speaks of; one line for each. */
  readonly heads: readonly string[];
  readonly tail: string;
  readonly span: Span;
  readonly indent: string;
}

function edgeLine(parsed: ParsedText, line: Statement, names: readonly string[]): EdgeLine | undefined {
  const { text } = parsed;
  const { first, end } = line;
  const meets = meetsOf(parsed.tokens, line);
  if (meets === end || meets === first) return undefined;
  const span = spanOf(parsed, first, end);
  const tail = onOneLine(parsed, spanOf(parsed, meets, end));
  const head = onOneLine(parsed, spanOf(parsed, first, meets));
  if (tail === undefined || head === undefined) return undefined;
  const heads = headsFromPoint(head, names);
  const isAlone = beginsLine(text, span.start);
  if (heads === undefined || (heads.length > 1 && !isAlone)) return undefined;
  return { heads, tail, span, indent: isAlone ? indentAt(text, span.start) : '' };
}

/** `near, right` is `P1 to P2 to P3`; `left, right` are two sides that do not meet. */
function headsFromPoint(head: string, names: readonly string[]): string[] | undefined {
  if (/^(?:the rest|all round)$/.test(head)) return [head];
  const said = head.split(/ ?, ?/).map(side => RECTANGLE_SIDES.indexOf(side));
  if (said.includes(-1)) return undefined;
  const sides = [...new Set(said)].sort((left, right) => left - right);
  const chains: number[][] = [];
  for (const side of sides) {
    const chain = chains.at(-1);
    if (chain?.at(-1) === side - 1) chain.push(side);
    else chains.push([side]);
  }
  // The left side runs on into the near one.
  if (chains.length > 1 && sides.includes(0) && sides.includes(3))
    chains.unshift([...chains.pop()!, ...chains.shift()!]);
  return chains.map(chain => [...chain, chain.at(-1)! + 1].map(side => names[side % names.length]!).join(' to '));
}
