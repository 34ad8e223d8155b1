import type { Key } from '../job/job.ts';
import type * as ast from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import type { SpecText } from './names.ts';
import type { Beside } from './points.ts';
import { writing } from './said-fix.ts';

/**
 * Whether a fall is told towards a side of the area, or what that meets (`falling 1:60 towards lawn`): a fault, for what it
 * falls towards is a point; from the side across it falls away.
 */
export function isTowardsSide(context: Context, text: SpecText, key: Key, fall: ast.Fall, beside: Beside): boolean {
  const name = fall.towards?.$refText;
  if (name === undefined || context.names.peek(text, 'point', name) !== undefined) return false;
  const { sideNames } = beside;
  const [side, ...more] = sideNames.includes(name) ? [name] : beside.sidesMeeting(name);
  if (side === undefined) return false;
  const isFour = sideNames.length === 4 && more.length === 0;
  const across = isFour ? sideNames[(sideNames.indexOf(side) + 2) % 4] : undefined;
  const away = `${fall.way} ${fall.rate.$cstNode?.text ?? '1:60'} away from ${across ?? 'A to B'}`;
  const message = `\`towards\` names a point, and \`${name}\` is none. Say from which line it falls: \`${away}\`.`;
  context.fault(text, key, fall, 'unknown-name', message, { fixes: across === undefined ? [] : [writing(away)] });
  context.breaks(name);
  return true;
}
