// What a person is about to do with the plan: to measure, to draw a section, to move something.
import type { LivePlan } from '../../../server/plan-protocol.ts';
import type { ToolSigns } from './draw.ts';
import { measured, printed } from './measure.ts';
import type { PlanWords } from './messages.ts';
import { type Place, type Size, toScreen, type View } from './view.ts';
import { fillIn } from './words.ts';

/** Places are mm on the ground. */
export type Tool =
  | { readonly kind: 'none' }
  /** From one place to another; `cross` is where the cross-hair stands. Measured, both stay to be seen. */
  | {
      readonly kind: 'measure' | 'section';
      readonly cross: Place;
      readonly from?: Place;
      readonly to?: Place;
    }
  | {
      readonly kind: 'move';
      readonly thing: string;
      readonly name: string;
      readonly from: Place;
      readonly to: Place;
      readonly byKeys: boolean;
      /** Asked of the text, and not answered yet. */
      readonly isAsked: boolean;
    };

export const NO_TOOL: Tool = { kind: 'none' };

type TwoPlaces = Extract<Tool, { kind: 'measure' | 'section' }>;

/** The next place of the two is chosen; after both it begins anew. */
export function withPlace({ kind, from, to }: TwoPlaces, place: Place): TwoPlaces {
  return from === undefined || to !== undefined
    ? { kind, cross: place, from: place }
    : { kind, cross: place, from, to: place };
}

/** What is said of it, in words. */
export function toolWords(tool: Tool, words: PlanWords, system: LivePlan['system']): string {
  const at = ({ x, y }: Place): [string, string] => [printed(x, system), printed(y, system)];
  if (tool.kind === 'none') return '';
  if (tool.kind === 'move') {
    if (tool.isAsked) return fillIn(words.moveAsked, tool.name);
    return fillIn(tool.byKeys ? words.movingByKeys : words.moving, tool.name, ...at(tool.to));
  }
  const { kind, from, to, cross } = tool;
  const here = fillIn(words.measureAt, ...at(cross));
  if (from === undefined) return `${kind === 'measure' ? words.measureFirst : words.sectionFirst} ${here}`;
  if (to === undefined) return `${kind === 'measure' ? words.measureSecond : words.sectionSecond} ${here}`;
  if (kind === 'section') return words.sectionWaiting;
  const { distance, x, y } = measured(from, to, system);
  return fillIn(words.measured, distance, x, y);
}

/** What is drawn of it. */
export function toolSigns(tool: Tool, view: View, size: Size, system: LivePlan['system']): ToolSigns {
  const on = (place: Place): Place => toScreen(view, size, place);
  if (tool.kind === 'none') return { lines: [], crosses: [], squares: [] };
  if (tool.kind === 'move') {
    const text = `${printed(tool.to.x, system)}, ${printed(tool.to.y, system)}`;
    return {
      lines: [[on(tool.from), on(tool.to)]],
      crosses: [],
      squares: [on(tool.to)],
      label: { at: on(tool.to), text }
    };
  }
  const { from, to, cross } = tool;
  const end = to ?? cross;
  return {
    lines: from === undefined ? [] : [[on(from), on(end)]],
    crosses: [...(from === undefined ? [] : [on(from)]), on(end)],
    squares: [],
    ...(from === undefined || tool.kind === 'section'
      ? {}
      : { label: { at: on(end), text: measured(from, end, system).distance } })
  };
}
