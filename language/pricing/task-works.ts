import type { TaskWord } from '../job/work.ts';
import type { Work } from './cost-line.ts';

/** What each task is part of, as the client's sheet groups the work. */
export const WORK_OF_TASK: Readonly<Record<TaskWord, Work>> = {
  locate: 'setting-out',
  'set-out': 'setting-out',
  'break-out': 'breaking-out',
  dig: 'dig',
  'cart-away': 'dig',
  'soft-spots': 'soft-spots',
  drains: 'drains',
  geotextile: 'geotextile',
  base: 'base',
  edging: 'edging',
  concrete: 'edging',
  bed: 'bed',
  laying: 'paving',
  cutting: 'paving',
  boxes: 'boxes',
  joints: 'joints',
  vibrating: 'paving',
  'second-sweeping': 'joints',
  'clean-up': 'clearing-up'
};
