import type { IToken } from 'chevrotain';
import type { Hint } from './hints.ts';
import { writes } from './text-edit.ts';

/** What helps where heights of points and places are told; `at` is the odd word's index, or one past the end. */
export function heightHint(tokens: readonly IToken[], at: number): Hint | undefined {
  return (
    ofNothing(tokens, at) ??
    heightFirst(tokens, at) ??
    heightsInSite(tokens, at) ??
    bracketedDistance(tokens, at) ??
    offInwards(tokens, at) ??
    belowFinish(tokens, at)
  );
}

/** `centre 2 m along A to B, 1.5 m in` */
function offInwards(tokens: readonly IToken[], at: number): Hint | undefined {
  const [comma, number, measure, odd] = tokens.slice(at - 3, at + 1);
  if (odd?.image !== 'in' || measure?.tokenType.name !== 'MEASURE' || comma?.image !== ',') return undefined;
  return {
    message: `Say to which side of the line: \`${number!.image} ${measure.image} out\` is to the area's own side, else \`left\` or \`right\` as one walks along it.`,
    fixes: writes(['out', 'left', 'right'], odd.startOffset, odd.image.length),
    isWhole: true
  };
}

/** `grate 5 mm below the finish` */
function belowFinish(tokens: readonly IToken[], at: number): Hint | undefined {
  const the = tokens[at]?.image === 'the' ? at : at - 1;
  const [where, article, what] = tokens.slice(the - 1, the + 2);
  if (article?.image !== 'the' || !/^(?:below|above)$/.test(where?.image ?? '')) return undefined;
  if (!/^(?:finish|paving|ground|units?|slabs?|blocks?)$/.test(what?.image ?? '')) return undefined;
  return {
    message: `Heights hang from a benchmark, not from the ${what!.image}: \`6 in below door-sill\`.`,
    fixes: [],
    isWhole: true
  };
}

/** `heights { A 3 in }` */
function ofNothing(tokens: readonly IToken[], at: number): Hint | undefined {
  const [first, odd] = [tokens[at - 1], tokens[at]];
  if (odd?.tokenType.name !== 'NUMBER' || first?.tokenType.name !== 'THING') return undefined;
  const edit = { start: first.startOffset, end: first.startOffset, text: 'ground ' };
  return {
    message: `Say first what is so high, the ground or a thing that is there: \`ground ${first.image} ${odd.image}\`.`,
    fixes: [{ title: 'Write `ground`', edits: [edit] }],
    isWhole: true
  };
}

/** `heights { ground 3 in at A }` */
function heightFirst(tokens: readonly IToken[], at: number): Hint | undefined {
  const [before, odd] = [tokens[at - 1], tokens[at]];
  if (odd?.tokenType.name !== 'NUMBER' || before?.tokenType.name !== 'ground') return undefined;
  const behind = tokens.findIndex(
    ({ image, startLine }, index) => index > at && (image === 'at' || startLine !== odd.startLine)
  );
  const point = behind > 0 && tokens[behind]!.image === 'at' ? tokens[behind + 1] : undefined;
  const message = 'The point stands before its height: ';
  if (point?.tokenType.name !== 'ID') return { message: `${message}\`ground A 3 in\`.`, fixes: [], isWhole: true };
  const words = [point, ...tokens.slice(at, behind)].map(({ image }) => image).join(' ');
  return {
    message: `${message}\`ground ${words}\`.`,
    fixes: writes([words], odd.startOffset, point.endOffset! + 1 - odd.startOffset),
    isWhole: true
  };
}

/** `site { ground A 3 in }` */
function heightsInSite(tokens: readonly IToken[], at: number): Hint | undefined {
  const [ground, point, odd] = [tokens[at - 2], tokens[at - 1], tokens[at]];
  if (odd?.tokenType.name !== 'NUMBER' || point?.tokenType.name !== 'ID') return undefined;
  if (ground?.tokenType.name !== 'ground') return undefined;
  const message = `Heights at points stand in a block of their own: \`heights { ground ${point.image} 3 in below door-sill }\`.`;
  return { message, fixes: [], isWhole: true };
}

/** `point P at (2 + 1 ft) along A to B` */
function bracketedDistance(tokens: readonly IToken[], at: number): Hint | undefined {
  const [close, word] = [tokens[at], tokens[at + 1]];
  if (close?.image !== ')' || !/^(?:along|from)$/.test(word?.image ?? '')) return undefined;
  const open = tokens.slice(0, at).findLastIndex(({ image }) => image === '(');
  if (!/^(?:at|centre|corner|hinge)$/.test(tokens[open - 1]?.image ?? '')) return undefined;
  const edits = [tokens[open]!, close].map(({ startOffset }) => ({
    start: startOffset,
    end: startOffset + 1,
    text: ''
  }));
  return {
    message: 'Brackets hold coordinates here: a distance along a line has none around it.',
    fixes: [{ title: 'Leave the brackets out', edits }],
    isWhole: true
  };
}
