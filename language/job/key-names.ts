import type { Key } from './job.ts';

/** What goes with every edging on spikes, and has its price under this name. */
export const SPIKES: Key = 'material:spikes';

/** `terrace` of `area:terrace/base/thickness`. */
export function nameIn(key: Key): string {
  return key.replace(/^[a-z-]+:/, '').replace(/\/.*$/, '');
}
