import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { PlanInput } from '../../language/views/plan/plan-input.ts';
import { planOf } from '../drawing/jobs.ts';
import { evaluated } from '../language/in-memory.ts';

const SAMPLES = path.join(import.meta.dirname, '../../samples');
const sample = (name: string): string => readFileSync(path.join(SAMPLES, name), 'utf8');
const PRICES = Object.fromEntries(['merchant-prices.paving', 'till-prices.paving'].map(name => [name, sample(name)]));

export type Edit = readonly [from: string | RegExp, to: string];

/** The plan of a sample with some of its text written otherwise. */
export async function planOfSample(name: string, edits: readonly Edit[] = []): Promise<PlanInput> {
  const text = edits.reduce((before, [from, to]) => {
    const after = before.replaceAll(typeof from === 'string' ? from : new RegExp(from, 'g'), to);
    if (after === before) throw new Error(`Not in ${name}: ${String(from)}`);
    return after;
  }, sample(name));
  return planOf(await evaluated(text, PRICES));
}

/** The same job twice, each with something that is hard to draw over the other. */
export const EDITED: Readonly<Record<string, { readonly sample: string; readonly edits: readonly Edit[] }>> = {
  'turning place widened': {
    sample: 'drive.paving',
    edits: [
      ['let turn-wide    = 5 * 1.10 m', 'let turn-wide    = 6 * 1.10 m'],
      ['centre (2.90, 6.35) m, turned -14', 'centre (1.90, 8.35) m, turned -14'],
      ['point R1 at (-0.80, 13.25) m', 'point R1 at (0.30, 13.25) m'],
      ['G1 19.970  G2 19.970', 'G1 19.965  G2 19.970']
    ]
  },
  'turning place removed': {
    sample: 'drive.paving',
    edits: [
      [/area turning \{[^]*?\n\}\n/, ''],
      [/accept [^\n]* on turning [^\n]*\n/, ''],
      ['T1 to T4  meets turning', 'T1 to T4  meets lawn'],
      [/log \{[^]*?\n\}\n/, '']
    ]
  },
  'terrace with boxes moved': {
    sample: 'terrace.paving',
    edits: [
      ['corner (7 ft 2-3/8 in, 3 ft .5 in)', 'corner (10 ft, 5 ft)'],
      [/box old-sprinkler [^]*?\n\}\n/, 'box cleaning-eye in terrace { circle 8 in across, centre (6 ft, 12 ft) }\n'],
      ['3 in below door-sill along A', '3 1/2 in below door-sill along A'],
      ['meets lawn, edging garden-strip set after laying', 'meets lawn']
    ]
  },
  'terrace renamed': {
    sample: 'terrace.paving',
    edits: [
      ['area terrace', 'area patio'],
      [/(in|into|of) terrace/, '$1 patio'],
      ['box clean-out', 'box rod-hole']
    ]
  }
};
