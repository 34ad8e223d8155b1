import type { Route } from '../job/heights.ts';
import type { Missing } from '../job/job.ts';
import type * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import { readEach, type Each } from './each-thing.ts';
import type { SpecText } from './names.ts';
import type { PathLines } from './path-lines.ts';

/** Reads ways that are to be free of steps. */
export function readRoutes(
  context: Context,
  lines: PathLines,
  texts: readonly SpecText[],
  missing: Missing[]
): Each<Route>[] {
  return readEach(context, texts, 'route', missing, ({ text, node, name }, key) => {
    const along = (node as ast.Route).line?.$refText;
    // A line of no length is told there.
    if (lines.named(text, key, node, 'line', along) === undefined) return undefined;
    const found = context.find(text, key, node, 'line', along, ['line']);
    const line = found && lines.of(found);
    return line && { key, name, line };
  });
}
