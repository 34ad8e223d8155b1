import type { TaskWord } from './work.ts';

/** What has to be done before a task can begin, whatever the job: only what nobody does the other way round. */
export const COMES_AFTER: Readonly<Record<TaskWord, readonly TaskWord[]>> = {
  locate: [],
  'set-out': [],
  'break-out': ['locate'],
  dig: ['locate', 'set-out', 'break-out'],
  'cart-away': ['dig'],
  'soft-spots': ['dig'],
  drains: ['dig'],
  geotextile: ['dig', 'soft-spots'],
  base: ['geotextile'],
  edging: ['dig'],
  concrete: ['dig'],
  bed: ['base'],
  laying: ['bed'],
  cutting: ['laying'],
  boxes: ['dig'],
  joints: ['laying', 'cutting'],
  vibrating: ['laying', 'cutting'],
  'second-sweeping': ['joints', 'vibrating'],
  'clean-up': ['second-sweeping', 'cart-away', 'edging', 'boxes', 'drains']
};
