import type { Key } from '../job/job.ts';
import { printLength } from '../measures/print.ts';
import { loopOfStrip, type StripFault, stripOutline, type WidthAt } from '../setting-out/strip-outline.ts';
import * as ast from '../syntax/generated/ast.ts';
import { MOST_SIDES } from '../syntax/limits.ts';
import type { Expression } from './amounts.ts';
import { ANY, NOT_NEGATIVE, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import type { NamedOutline } from './outlines.ts';
import type { PathLines } from './path-lines.ts';

/** Reads outlines along a line: as wide all along, or of widths told at distances from its start. */
export class Strips {
  private readonly context: Context;
  private readonly lines: PathLines;

  constructor(context: Context, lines: PathLines) {
    this.context = context;
    this.lines = lines;
  }

  outline(text: SpecText, key: Key, node: ast.Strip): NamedOutline | undefined {
    const line = this.lines.named(text, key, node, 'line', node.line?.$refText);
    const widths = this.widths(text, key, node);
    if (line === undefined || widths === undefined) return undefined;
    const sides = stripOutline(line, widths);
    if ('fault' in sides) return this.doesNotFit(text, key, node, sides);
    if (sides.length > MOST_SIDES)
      return this.context.fault(
        text,
        key,
        node,
        'too-many-sides',
        `Along the curves of this line the changing width makes an outline of ${sides.length} sides; at most ${MOST_SIDES} are worked out. Keep the width as it is along the curves.`
      );
    return { loop: loopOfStrip(sides), sideNames: sides.map(({ name }) => name), form: 'strip' };
  }

  private widths(text: SpecText, key: Key, node: ast.Strip): WidthAt[] | undefined {
    const widths: WidthAt[] = [];
    for (const [index, one] of node.widths.entries()) {
      const widthKey = `${key}/width-${index + 1}`;
      const width = this.context.given(text, widthKey, one.width as Expression | undefined, 'm', NOT_NEGATIVE);
      const at =
        one.station === undefined
          ? { value: 0 }
          : this.context.given(text, `${widthKey}/at`, one.station as Expression, 'm', ANY);
      if (width === undefined || at === undefined) return undefined;
      widths.push({ at: at.value, width: width.value });
    }
    const tell = (one: ast.StripWidth, message: string): undefined =>
      this.context.fault(text, key, one, 'strip-does-not-fit', message);
    const bare = node.widths.find(({ station }) => station === undefined);
    if (node.widths.length > 1 && bare !== undefined)
      return tell(bare, 'Say how far along the line each of several widths is: `4 ft wide at 0, 5 ft wide at 12 ft`.');
    const late = widths.findIndex(({ at }, index) => index > 0 && at <= widths[index - 1]!.at);
    if (late > 0)
      return tell(
        node.widths[late]!,
        'Give the widths in their order along the line, each further on than the one before.'
      );
    return widths;
  }

  private doesNotFit(text: SpecText, key: Key, node: ast.Strip, fault: StripFault): undefined {
    return this.context.fault(text, key, node, 'strip-does-not-fit', this.why(node.line.$refText, fault));
  }

  private why(line: string, fault: StripFault): string {
    const print = (length: number): string => printLength(length, this.context.system);
    switch (fault.fault) {
      case 'no-width':
        return 'A strip without any width encloses nothing. Say how wide it is.';
      case 'too-tight':
        return `The curve of ${line} that begins ${print(fault.at)} along it is too tight for this width: its radius must be at least half of it. Make the strip narrower there, or the curve wider.`;
      case 'folds-over':
        return `So wide, the strip folds over itself at (${print(fault.at.x)}, ${print(fault.at.y)}). Make it narrower there, or round the corner of ${line}.`;
    }
  }
}
