import { tintOf } from '../../drawing/tints.ts';
import type { PlanUnit } from '../plan/plan-input.ts';

export function tintOfUnit({ colour }: PlanUnit): { readonly tint?: string } {
  const tint = tintOf(colour);
  return tint === undefined ? {} : { tint };
}
