import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Entered } from '../read.ts';

function text(name: string): string {
  return readFileSync(path.join(import.meta.dirname, `${name}.paving`), 'utf8');
}

/** One of the two jobs with the prices that it uses. */
export function wholeJob(name: 'terrace' | 'drive'): Promise<Entered> {
  const prices = name === 'terrace' ? 'till-prices' : 'merchant-prices';
  return Entered.of(text(name), { [`${prices}.paving`]: text(prices) });
}
