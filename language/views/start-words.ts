import Fraction from 'fraction.js';
import type { System } from '../job/job.ts';
import type { Size } from '../laying/starts/better-sizes.ts';
import type { Cutting } from '../laying/starts/cutting.ts';
import type { StartChange } from '../laying/starts/start-change.ts';
import type { Point } from '../geometry/index.ts';
import { inOneMeasure, lengthIn, toNearest } from '../measures/lengths.ts';
import { printAs, printThickness } from '../measures/print.ts';

/** A length as it is written in a spec: `40 mm`, `1 ft 2 1/2 in`. */
export function lengthText(metres: number, system: System): string {
  return lengthIn(system, toNearest(new Fraction(metres), system));
}

/** `(40, 0) mm`, `(1 ft 2 1/2 in, 3 in)`. */
function shiftText({ x, y }: Point, system: System): string {
  const lengths = [x, y].map(metres => toNearest(new Fraction(metres), system));
  const one = inOneMeasure(system, lengths);
  if (one !== undefined) return `(${one.numbers.join(', ')}) ${one.measure}`;
  return `(${lengths.map(length => (length.equals(0) ? '0' : lengthIn(system, length))).join(', ')})`;
}

/** `4.06 x 3.09 m`. */
export function sizeText(size: Size, system: System): string {
  const lengths = size.map(metres => toNearest(new Fraction(metres), system));
  const one = inOneMeasure(system, lengths);
  if (one !== undefined) return `${one.numbers.join(' x ')} ${one.measure}`;
  return lengths.map(length => lengthIn(system, length)).join(' x ');
}

/** The clauses of `start` that a change writes, without those that stay. */
export function startClauses({ shifted, equalCuts, turned }: StartChange, system: System): string[] {
  return [
    ...(equalCuts === undefined ? [] : ['equal cuts']),
    ...(turned === undefined ? [] : [`turned ${Math.round((turned * 180) / Math.PI)} degrees`]),
    ...(shifted === undefined || isNowhere(shifted) ? [] : [`shifted ${shiftText(shifted, system)}`])
  ];
}

export function jointClause(joint: number, system: System): string {
  return `joints ${lengthText(joint, system)}`;
}

function isNowhere({ x, y }: Point): boolean {
  return x === 0 && y === 0;
}

/** `Start 40 mm further along`, `Turn the courses by a quarter, joints 3.1 mm`. */
export function changeTitle(
  { shifted, equalCuts, turned, joint }: StartChange,
  said: Point | undefined,
  system: System
): string {
  const begins = [
    ...(equalCuts === undefined ? [] : ['with equal cuts']),
    ...(shifted === undefined ? [] : moved(shifted, turned === undefined ? said : undefined, equalCuts, system))
  ];
  const start = begins.length === 0 ? [] : [`start ${begins.join(', ')}`];
  const parts = [
    ...(turned === undefined ? [] : ['turn the courses by a quarter']),
    ...start,
    ...(joint === undefined ? [] : [jointClause(joint, system)])
  ];
  const title = parts.join(', ');
  return title.charAt(0).toUpperCase() + title.slice(1);
}

/** How far the first unit moves from where it lies; where the start is written anew, from the corner. */
function moved(to: Point, said: Point | undefined, equalCuts: true | undefined, system: System): string[] {
  const from = said ?? { x: 0, y: 0 };
  const ways = [
    ...(equalCuts === undefined ? [[to.x - from.x, 'along'] as const] : []),
    [to.y - from.y, 'across'] as const
  ].filter(([by]) => lengthText(Math.abs(by), system) !== lengthText(0, system));
  return ways.map(([by, way]) => `${lengthText(Math.abs(by), system)} ${by > 0 ? 'further' : 'less far'} ${way}`);
}

/** `12 fewer cuts, 3.2 m less sawing`; what a person would want to know before. */
export function savings(now: Cutting, after: Cutting, system: System): string {
  if (after.cutUnits === 0) return 'no cuts';
  const fewer = now.cutUnits - after.cutUnits;
  const slivers = now.slivers - after.slivers;
  return [
    ...(fewer === 0 ? [] : [counted(fewer, 'cut')]),
    ...(slivers === 0 ? [] : [counted(slivers, 'sliver'), ...narrowest(now, after, system)]),
    ...sawing(now, after, system)
  ].join(', ');
}

function narrowest(now: Cutting, after: Cutting, system: System): string[] {
  const [was, is] = [now.narrowest ?? 0, after.narrowest ?? 0];
  if (is - was < WORTH_MARKING) return [];
  return [`narrowest piece ${printThickness(is, system)} instead of ${printThickness(was, system)}`];
}

/** In metres of width. */
const WORTH_MARKING = 0.002;

function counted(fewer: number, what: string): string {
  const count = Math.abs(fewer);
  return `${count} ${fewer > 0 ? 'fewer' : 'more'} ${what}${count === 1 ? '' : 's'}`;
}

/** In metres of sawing that are worth a word. */
const WORTH_A_WORD = 0.05;

function sawing(now: Cutting, after: Cutting, system: System): string[] {
  const less = now.sawLength - after.sawLength;
  if (Math.abs(less) < WORTH_A_WORD) return [];
  return [`${sawLengthText(Math.abs(less), system)} ${less > 0 ? 'less' : 'more'} sawing`];
}

/** Nothing is cut to it: to a tenth of a metre, or whole feet. */
export function sawLengthText(metres: number, system: System): string {
  return system === 'metric' ? `${metres.toFixed(1)} m` : printAs('run', metres, system);
}
