import type { System } from '../../../job/job.ts';
import { printAs } from '../../../measures/print.ts';
import type { AreaChange } from './area-changes.ts';
import type { MarkChange } from './mark-changes.ts';
import { movedWords, printMove } from './moved-words.ts';
import { fromTo, type PointChange } from './point-changes.ts';

/** What is written at a mark, the fullest first. */
export function markLabels(mark: MarkChange, system: System): string[] {
  const { words, calledBefore, fate, by, isWhereItWas } = mark;
  const named = called(words, calledBefore);
  switch (fate) {
    case 'comes':
      return [`${named}, new`];
    case 'goes':
      return [`${named}, gone`];
    case 'moves': {
      const far = by === undefined ? '' : printMove(Math.hypot(by.x, by.y), system);
      return [`${named}, moved ${by ? movedWords(by, system) : ''}`, `${named}, moved ${far}`, `${named}, moved`];
    }
    case 'changes': {
      if (!isWhereItWas) return [`${named}, ${mark.after!.loops.length > 0 ? 'other shape' : 'runs otherwise'}`];
      const told = toldFromTo(mark);
      if (told === undefined) return [calledBefore === undefined ? `${named}, changed` : named];
      return [`${named}: ${told}`, `${named}, changed`];
    }
    case 'unknown':
      return [`${named}, ${mark.before === undefined ? 'not known before' : 'not known after'}`];
    case 'stays':
      return [named];
  }
}

/** What is told of a mark besides its name, where that differs: `raise 1/4 → lower 1/8 in`. */
export function toldFromTo({ before, after }: MarkChange): string | undefined {
  if (before === undefined || after === undefined) return undefined;
  const [old, now] = [before.told.replace(before.words, () => after.words), after.told];
  if (old === now) return undefined;
  const rest = (longer: string, start: string): string => longer.slice(start.length).replace(/^[,:]? /, '');
  if (now.startsWith(old)) return rest(now, old);
  if (old.startsWith(now)) return `before ${rest(old, now)}`;
  let shared = 0;
  while (old[shared] === now[shared]) shared++;
  // Whole clauses alone are left out.
  const start = Math.max(...[', ', ': '].map(end => now.slice(0, shared).lastIndexOf(end)));
  return start < 0 ? fromTo(old, now) : fromTo(old.slice(start + 2), now.slice(start + 2));
}

export function pointLabel({ name, calledBefore, fate, before, after }: PointChange, system: System): string {
  const named = called(name ?? '', calledBefore);
  switch (fate) {
    case 'comes':
      return `${named}, new`;
    case 'goes':
      return `${named}, gone`;
    case 'moves': {
      const by = { x: after!.at.x - before!.at.x, y: after!.at.y - before!.at.y };
      return `${named}, moved ${movedWords(by, system)}`;
    }
    case 'unknown':
      return `${named}, ${before === undefined ? 'not known before' : 'not known after'}`;
    case 'changes':
    case 'stays':
      return named;
  }
}

/** Name of an area, and what becomes of it. */
export function areaLabel(area: AreaChange, system: System): string[] {
  const { name, calledBefore, fate, size, isOutlineSame } = area;
  const named = called(name, calledBefore);
  const print = (squareMetres: number): string => printAs('area', squareMetres, system);
  switch (fate) {
    case 'comes':
      return [`${named}, new`, `+${print(size.after!)}`];
    case 'goes':
      return [`${named}, gone`, `−${print(size.before!)}`];
    case 'changes': {
      const [old, now] = [print(size.before!), print(size.after!)];
      return [named, ...(isOutlineSame ? layingWords(area) : [old === now ? now : fromTo(old, now)])];
    }
    case 'unknown':
      return [named, size.before === undefined ? 'not known before' : 'not known after'];
    case 'stays':
      return [named];
  }
}

function layingWords({ laying, before, after }: AreaChange): string[] {
  if (laying.length === 0) return [];
  const [old, now] = [before?.noNumbers, after?.noNumbers];
  if (old === undefined && now === undefined) return ['laid otherwise'];
  return [old === undefined ? 'no numbers after' : 'no numbers before'];
}

/** `terrace (was patio)` */
export function called(name: string, before: string | undefined): string {
  return before === undefined ? name : `${name} (was ${before})`;
}
