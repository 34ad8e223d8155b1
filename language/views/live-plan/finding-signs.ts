import type { Finding } from '../../findings/finding.ts';
import { nameIn } from '../../job/key-names.ts';
import type { Severity } from '../../job/severity.ts';
import type { MmBounds } from './in-millimetres.ts';
import type { LiveMark, LiveShape, LiveThing } from './live-plan.ts';
import type { UnledThing } from './piece.ts';

export interface FindingSigns {
  readonly shapes: readonly LiveMark[];
  readonly things: readonly UnledThing[];
  /** Of findings that have a sign. */
  readonly severities: ReadonlySet<Severity>;
}

/** More messages at one place nobody reads: the rest is counted. */
const MOST_TOLD = 20;

const WORDS: Readonly<Record<Severity, string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

const ORDER: readonly Severity[] = ['error', 'warning', 'note'];

/**
 * A sign at each thing that something was found of, with all that was; what has no place on the plan is told without a
 * sign. `whole`: where the plan lies, for these.
 */
export function findingSigns(
  findings: readonly Finding[],
  file: string,
  drawn: {
    readonly things: ReadonlyMap<string, UnledThing>;
    readonly shapes: readonly LiveShape[];
    readonly whole: MmBounds;
  }
): FindingSigns {
  const spots = spotsOf(drawn.shapes);
  const shapes: LiveMark[] = [];
  const things: UnledThing[] = [];
  const severities = new Set<Severity>();
  for (const [key, found] of byThing(findings, of => drawn.things.has(of))) {
    const of = key.slice(PREFIX.length);
    const thing = drawn.things.get(of);
    const worst = ORDER.find(severity => found.some(one => one.severity === severity))!;
    const told = { key, kind: 'Findings', facts: factsOf(found, file) };
    if (thing === undefined) {
      things.push({ ...told, name: nameIn(of), bounds: drawn.whole });
      continue;
    }
    const [left, bottom, right, top] = thing.bounds;
    const [x, y] = spots.get(of) ?? [(left + right) / 2, (bottom + top) / 2];
    severities.add(worst);
    shapes.push({ kind: 'mark', key, content: 'findings', ink: 'mark', thing: key, x, y, sign: worst });
    const area = thing.area === undefined ? {} : { area: thing.area };
    things.push({ ...told, name: thing.name, bounds: [x, y, x, y], ...area });
  }
  return { shapes, things, severities };
}

const PREFIX = 'finding:';

/** Findings together by the thing that they are of: the one named, or the nearest that it belongs to and that is drawn. */
export function byThing(findings: readonly Finding[], isDrawn: (key: string) => boolean): Map<string, Finding[]> {
  const found = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = PREFIX + (nearest(finding.target, isDrawn) ?? finding.target);
    const held = found.get(key);
    if (held === undefined) found.set(key, [finding]);
    else held.push(finding);
  }
  return found;
}

/** A key, or the first of those that it belongs to, that is as wanted. */
export function nearest(key: string, isWanted: (key: string) => boolean): string | undefined {
  for (let at = key; at !== ''; at = at.slice(0, Math.max(0, at.lastIndexOf('/')))) if (isWanted(at)) return at;
  return undefined;
}

/** Where texts and handles of things stand: of an area its roomiest place, of an edge the middle of its longest side. */
function spotsOf(shapes: readonly LiveShape[]): Map<string, readonly [number, number]> {
  const spots = new Map<string, readonly [number, number]>();
  for (const shape of shapes) {
    if ((shape.kind === 'text' || shape.kind === 'mark') && !spots.has(shape.thing))
      spots.set(shape.thing, [shape.x, shape.y]);
  }
  return spots;
}

function factsOf(findings: readonly Finding[], file: string): LiveThing['facts'] {
  const sorted = ORDER.flatMap(severity => findings.filter(one => one.severity === severity));
  const told = sorted.slice(0, MOST_TOLD).map(one => {
    const where = one.file === file ? `line ${one.line}` : `line ${one.line} of ${one.file}`;
    return [`${WORDS[one.severity]}, ${where}`, one.message] as const;
  });
  const more = sorted.length - told.length;
  return more === 0 ? told : [...told, ['And', `${more} more`]];
}
