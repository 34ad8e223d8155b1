// Equal cuts come as rows of one form; each is drawn, pointed at and numbered by itself.
import type { LivePath, LiveRows } from '../../../server/plan-protocol.ts';

export function piecesOf({ kind: _, form, runs, numbered, ...rest }: LiveRows): LivePath[] {
  return runs.flatMap(([x, y, direction, stepX, stepY, count], run) => {
    const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
    return Array.from({ length: count }, (_, number): LivePath => {
      const place = (right: number, up: number): [number, number] => [
        x + number * stepX + right * cosine - up * sine,
        y + number * stepY + right * sine + up * cosine
      ];
      const loop: number[] = [];
      for (let at = 0; at < form.length; at += 3) loop.push(...place(form[at]!, form[at + 1]!), form[at + 2]!);
      return {
        ...rest,
        kind: 'path',
        key: `${rest.key}/${run + 1}/${number + 1}`,
        loops: [loop],
        closed: true,
        ...(numbered === undefined ? {} : { numbered: roomIn(numbered, place, direction) })
      };
    });
  });
}

function roomIn(
  { x, y, size, turn }: NonNullable<LiveRows['numbered']>,
  place: (right: number, up: number) => [number, number],
  direction: number
): NonNullable<LivePath['numbered']> {
  const [right, up] = place(x, y);
  return { x: right, y: up, size, turn: turn + direction };
}
