import type { BlockName } from '../syntax/words.ts';
import { AREA_WORDS } from './help/area-words.ts';
import { EDGE_WORDS } from './help/edge-words.ts';
import { DRAIN_WORDS } from './help/drain-words.ts';
import { GATE_WORDS } from './help/gate-words.ts';
import type { BlockHelp, Helps, WordHelp } from './help/help.ts';
import { LEVEL_LINE_WORDS } from './help/height-words.ts';
import { JOB_WORDS } from './help/job-words.ts';
import { INSET_WORDS, KEPT_OUT_WORDS } from './help/kept-out-words.ts';
import { BOND_WORDS, EXISTING_WORDS, SIDE_KIND_WORDS, SOIL_KIND_WORDS } from './help/kind-words.ts';
import { LEVEL_SHEET_WORDS } from './help/level-sheet-words.ts';
import { LOG_WORDS } from './help/log-words.ts';
import { MATERIAL_WORDS } from './help/material-words.ts';
import { PIPE_WORDS } from './help/pipe-words.ts';
import { PRICE_WORDS, SUPPLIER_WORDS } from './help/price-words.ts';
import { RATE_BLOCK_WORDS } from './help/rate-words.ts';
import { RULE_WORDS } from './help/rule-words.ts';
import { RULEBOOK_WORDS } from './help/rulebook-words.ts';
import { SITE_WORDS } from './help/site-words.ts';
import { SOURCE_WORDS } from './help/source-words.ts';
import { SPEC_WORDS } from './help/spec-words.ts';
import { UNIT_WORDS } from './help/unit-words.ts';
import { VARIANT_WORDS } from './help/variant-words.ts';

export type { WordHelp } from './help/help.ts';
export { measureHelp } from './measure-help.ts';
export { thingHelp } from './thing-help.ts';

/** Where a word stands: the block, and the word of the statement it stands in (absent when it is itself the statement's word). */
export interface WordPlace {
  readonly block: BlockName;
  readonly statement?: string;
}

/** Help on a word of the language where it stands; in `edges`, `heights` and `log`, whose lines begin with no word of their own, by the word alone. */
export function wordHelp(word: string, { block, statement }: WordPlace): WordHelp | undefined {
  const { statements, within, isLines } = HELP[block];
  const helps = statement === undefined || isLines ? statements : of(within ?? {}, statement);
  return of<WordHelp>(helps ?? NONE, word);
}

const NONE: Helps = {};

/** A word that happens to be one of the programming language's own is none of ours. */
function of<T>(all: Readonly<Record<string, T>>, word: string): T | undefined {
  return Object.hasOwn(all, word) ? all[word] : undefined;
}

const HELP: Readonly<Record<BlockName, BlockHelp & { readonly isLines?: true }>> = {
  spec: SPEC_WORDS,
  job: JOB_WORDS,
  site: SITE_WORDS,
  unit: UNIT_WORDS,
  material: MATERIAL_WORDS,
  'soil-kind': SOIL_KIND_WORDS,
  'side-kind': SIDE_KIND_WORDS,
  bond: BOND_WORDS,
  existing: EXISTING_WORDS,
  area: AREA_WORDS,
  edges: { statements: EDGE_WORDS, isLines: true },
  'kept-out': KEPT_OUT_WORDS,
  inset: INSET_WORDS,
  heights: { statements: LEVEL_LINE_WORDS, isLines: true },
  drain: DRAIN_WORDS,
  pipe: PIPE_WORDS,
  gate: GATE_WORDS,
  'level-sheet': LEVEL_SHEET_WORDS,
  log: { statements: LOG_WORDS, isLines: true },
  supplier: SUPPLIER_WORDS,
  price: PRICE_WORDS,
  source: SOURCE_WORDS,
  rulebook: RULEBOOK_WORDS,
  rule: RULE_WORDS,
  example: SPEC_WORDS,
  rate: RATE_BLOCK_WORDS,
  variant: VARIANT_WORDS
};
