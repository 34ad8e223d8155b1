import type { Key } from './job.ts';

/** `terrace` of `area:terrace/base/thickness`. */
export function nameIn(key: Key): string {
  return key.replace(/^[a-z-]+:/, '').replace(/\/.*$/, '');
}
