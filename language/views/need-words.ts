import type { NeedQuantities, OrderQuantities } from '../buying/order-contract.ts';

/** What a need is for. */
export const WORKS: Readonly<Record<NeedQuantities['for'][number]['work'], string>> = {
  paving: 'paving',
  boxes: 'trays of covers',
  bed: 'bed',
  base: 'base',
  'sub-base': 'sub-base',
  'soft-spots': 'soft spots',
  joints: 'joints',
  edging: 'edging',
  drains: 'drains',
  geotextile: 'geotextile'
};

/** Behind a volume: it is bought loose. */
export const LOOSE: Readonly<Record<NeedQuantities['in'][number]['measure'], string>> = {
  piece: '',
  kg: '',
  m3: ' loose',
  m2: '',
  m: ''
};

/** What one piece of it is called. */
export const PIECES: Readonly<Record<NeedQuantities['kind'], string>> = {
  unit: 'piece',
  edging: 'length',
  'curve-pieces': 'piece',
  spikes: 'spike',
  geotextile: 'piece',
  material: 'piece'
};

/** Whether something is to be bought and is sold in no way that is known. */
export function isUnpriced({ item, in: amounts, choices }: NeedQuantities, order: readonly OrderQuantities[]): boolean {
  return (
    choices.length === 0 &&
    amounts.some(({ toBuy }) => toBuy > 0) &&
    !order.some(({ item: ordered }) => ordered === item)
  );
}
