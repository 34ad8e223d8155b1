import type { System } from '../job/job.ts';
import { printLength } from '../measures/print.ts';
import type { LevelQuantities } from '../quantities/levels-stage.ts';

/** Where a height is told: `C`, `A to B, 6 ft`. */
export function levelPlace({ at, along }: Pick<LevelQuantities, 'at' | 'along'>, system: System): string {
  return along === undefined ? at : `${at}, ${printLength(along, system)}`;
}
