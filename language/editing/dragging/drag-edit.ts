import type { TextChange } from '../../findings/finding.ts';
import { distance, type Point } from '../../geometry/index.ts';
import type { Job, Key } from '../../job/job.ts';
import { placeIn } from '../../laying/field-frame.ts';
import { LARGEST_LENGTH } from '../../lowering/context.ts';
import type { Told, Why, WrittenArc, WrittenPair } from '../../lowering/handles/told-handle.ts';
import { ToldHandles } from '../../lowering/handles/told-handles.ts';
import { lower, type Lowered } from '../../lowering/lower.ts';
import type { SpecText } from '../../lowering/names.ts';
import { Placer } from '../../lowering/placer.ts';
import { type Project, projectWith } from '../../lowering/project.ts';
import type { Evaluation, Look } from '../../paving.ts';
import type { Parse } from '../../syntax/parse.ts';
import { applied, smallest } from '../../syntax/text-edit.ts';
import { arcMove } from './arc-move.ts';
import { arcOf, areaOf, handlePlace } from './handle-places.ts';
import { alongMove, pairMove, polarMove } from './moves.ts';
import type { Edits } from './pair-edits.ts';

/** The texts of a job, what they come to, and how a changed one is read. */
export interface DragScene extends Look {
  readonly evaluation: Evaluation;
  readonly parse: Parse;
}

/** Edits of one text that move a thing, none of which touches another, or in a sentence why there are none. */
export type Drag = Why | { readonly file: string; readonly edits: readonly TextChange[] };

/**
 * How the text reads once the handle of a thing comes to lie at a place, m; as near to it as is read off a tape. What is
 * handed out was read anew, and lies there.
 */
export function dragEdit(scene: DragScene, thing: Key, to: Point): Drag {
  if (!(Math.abs(to.x) <= LARGEST_LENGTH && Math.abs(to.y) <= LARGEST_LENGTH))
    return { why: 'No job reaches as far as that.' };
  const { project, evaluation, parse } = scene;
  const before = lower(project);
  if (before.job === undefined) return { why: NO_JOB };
  const handle = new ToldHandles(project, before.job).told(thing);
  if ('why' in handle) return handle;
  const { text, told } = handle;
  const made = moveOf(told, thing, to, { before, job: before.job, evaluation, source: text.parsed.text });
  if ('why' in made) return made;
  const edits = made.edits.map(edit => smallest(text.parsed.text, edit));
  const now: SpecText = { file: text.file, parsed: parse(applied(text.parsed.text, edits)) };
  const changed = projectWith(project, new Map([[text, now]]));
  const after = lower(changed);
  if (!made.isReached(changed, after)) return { why: whyNotThere(before, after) };
  const placer = Placer.of(text);
  return { file: text.file, edits: edits.map(edit => placer.change(edit)) };
}

/** The edits of a move, and whether the thing lies there in the texts as read anew. */
interface Move extends Edits {
  isReached(project: Project, after: Lowered): boolean;
}

interface From {
  readonly before: Lowered;
  readonly job: Job;
  readonly evaluation: Evaluation;
  readonly source: string;
}

function moveOf(told: Told, thing: Key, to: Point, from: From): Move | Why {
  if (told.how === 'start') return startMove(told.pair, thing, to, from);
  if (told.how === 'arc') return bendMove(told.arc, thing, to, from);
  const { before, job, source } = from;
  const at = handlePlace(job, thing);
  if (at === undefined) return { why: LOST };
  const by = { x: to.x - at.x, y: to.y - at.y };
  const edits = placeEdits(told, by, { before, job, source });
  if ('why' in edits) return edits;
  // Each number is rounded by itself.
  const within = Math.hypot(...edits.within) + HAIR;
  return {
    ...edits,
    isReached: (_, after) => {
      const now = after.job && handlePlace(after.job, thing);
      return now !== undefined && distance(now, to) <= within;
    }
  };
}

function placeEdits(
  told: Extract<Told, { readonly how: 'pair' | 'along' | 'polar' }>,
  by: Point,
  { before, job, source }: Omit<From, 'evaluation'>
): Edits | Why {
  if (told.how === 'along') {
    const line = before.toldFrom.get(told.from);
    return line && 'side' in line ? alongMove(told.spot, line, by, job.system) : { why: LOST };
  }
  if (told.how === 'polar') {
    const point = before.toldFrom.get(told.from);
    return point && 'centre' in point ? polarMove(told.spot, point, by, job.system) : { why: LOST };
  }
  return pairMove(source, told.pair, by, job.system);
}

/** The start lies where laying begins; its shift is told in the frame of the courses. */
function startMove(pair: WrittenPair, thing: Key, to: Point, { job, evaluation, source }: From): Move | Why {
  const area = areaOf(job, thing);
  const laid = evaluation.numbers?.laid.find(one => one.area.key === area?.key)?.laid;
  const frame = laid?.laid.parts.find(({ part }) => part === 'field')?.how?.frame;
  const shifted = area?.start.shifted;
  if (frame === undefined || shifted === undefined) return { why: LOST };
  const by = placeIn(frame, to);
  const edits = pairMove(source, pair, by, job.system);
  const wanted = [shifted.along.value + by.x, shifted.across.value + by.y];
  return {
    ...edits,
    isReached: (_, after) => {
      const now = after.job && areaOf(after.job, thing)?.start.shifted;
      const values = [now?.along.value, now?.across.value];
      return values.every((value, at) => value !== undefined && isNear(value, wanted[at]!, edits.within[at]!));
    }
  };
}

/** The middle of an arc moves with its size alone: what is reached is the size. */
function bendMove(arc: WrittenArc, thing: Key, to: Point, { job }: From): Move | Why {
  const side = arcOf(job, thing);
  if (side === undefined) return { why: LOST };
  const edits = arcMove(arc, side, to, job.system);
  if ('why' in edits) return edits;
  return {
    ...edits,
    isReached: (project, after) => {
      if (after.job === undefined || arcOf(after.job, thing)?.arc === undefined) return false;
      const now = new ToldHandles(project, after.job).told(thing);
      const size = 'why' in now || now.told.how !== 'arc' ? undefined : now.told.arc.size.value.valueOf();
      return size !== undefined && isNear(size, edits.size, edits.within[0]!);
    }
  };
}

function isNear(value: number, wanted: number, within: number): boolean {
  return Math.abs(value - wanted) <= within + HAIR;
}

/** What is worked out in doubles may miss by less than anyone can measure, m. */
const HAIR = 1e-6;

/** What is wrong with the job where the thing would lie. */
function whyNotThere(before: Lowered, after: Lowered): string {
  const known = new Set(before.findings.map(({ id, target }) => `${id} ${target}`));
  const error = after.findings.find(
    ({ id, target, severity }) => severity === 'error' && !known.has(`${id} ${target}`)
  );
  return `It can't lie there.${error === undefined ? '' : ` ${error.message}`}`;
}

const LOST = 'It has no place in the job yet: mend what is wrong with it first.';
const NO_JOB = 'There is no job in this file.';
