import type { System } from '../../../job/job.ts';
import { printAs, printMarked } from '../../../measures/print.ts';
import type { AreaChange } from './area-changes.ts';
import type { MarkChange } from './mark-changes.ts';
import { movedWords, roundedMove } from './moved-words.ts';
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
      const far = by === undefined ? '' : printMarked(roundedMove(Math.hypot(by.x, by.y)), system);
      return [`${named}, moved ${by ? movedWords(by, system) : ''}`, `${named}, moved ${far}`, `${named}, moved`];
    }
    case 'changes':
      if (calledBefore !== undefined && mark.before?.told.replace(mark.before.words, mark.words) === mark.after?.told)
        return [named];
      if (isWhereItWas) return [`${named}, changed`];
      return [mark.after!.loops.length > 0 ? `${named}, other shape` : `${named}, runs otherwise`];
    case 'unknown':
      return [`${named}, ${mark.before === undefined ? 'not known before' : 'not known after'}`];
    case 'stays':
      return [named];
  }
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
export function areaLabel(
  { name, calledBefore, fate, size, isOutlineSame, laying }: AreaChange,
  system: System
): string[] {
  const named = called(name, calledBefore);
  const print = (area: number): string => printAs('area', area, system);
  switch (fate) {
    case 'comes':
      return [`${named}, new`, `+${print(size.after!)}`];
    case 'goes':
      return [`${named}, gone`, `−${print(size.before!)}`];
    case 'changes': {
      const [old, now] = [print(size.before!), print(size.after!)];
      return [
        named,
        ...(isOutlineSame ? (laying.length > 0 ? ['laid otherwise'] : []) : [old === now ? now : fromTo(old, now)])
      ];
    }
    case 'unknown':
      return [named, size.before === undefined ? 'not known before' : 'not known after'];
    case 'stays':
      return [named];
  }
}

/** `terrace (was patio)` */
export function called(name: string, before: string | undefined): string {
  return before === undefined ? name : `${name} (was ${before})`;
}
