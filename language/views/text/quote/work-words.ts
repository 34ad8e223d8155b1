import type { CostKind, Work } from '../../../pricing/cost-line.ts';

/** A piece of work, as a client reads it. */
export const WORK_WORDS: Readonly<Record<Work, string>> = {
  'setting-out': 'Setting out',
  'breaking-out': 'Taking up old paving',
  dig: 'Digging and taking away',
  'soft-spots': 'Soft spots',
  drains: 'Drains',
  geotextile: 'Geotextile',
  'sub-base': 'Sub-base',
  base: 'Base',
  edging: 'Edging',
  bed: 'Bed',
  paving: 'Paving',
  boxes: 'Boxes and covers',
  joints: 'Joints',
  'clearing-up': 'Clearing up',
  other: 'Other',
  delivery: 'Delivery',
  hire: 'Machines and tools'
};

export const KIND_WORDS: Readonly<Record<CostKind, string>> = {
  material: 'Materials',
  delivery: 'Delivery',
  labour: 'Labour',
  hire: 'Hire',
  disposal: 'Taking away',
  extra: 'Other costs',
  contingency: 'Contingency',
  'taken-off': 'Taken off'
};
