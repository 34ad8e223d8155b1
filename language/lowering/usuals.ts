import type { Assumed, Country, Given } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { assumed, type Context, type Wanted } from './context.ts';
import type { SpecText } from './names.ts';

/** What a job can leave out and is as usual then; all but the saw's cut differ from country to country. */
export type Usual =
  | 'bed'
  | 'joint'
  | 'joint-least'
  | 'joint-most'
  | 'saw-cut'
  | 'barrow'
  | 'compaction-layer'
  | 'gate-clearance'
  | 'old-paving';

const WORDS: Readonly<Record<Usual, string>> = {
  bed: 'usual bed',
  joint: 'usual joint',
  'joint-least': 'usual least joint',
  'joint-most': 'usual widest joint',
  'saw-cut': "usual width of a saw's cut",
  'compaction-layer': 'usual compaction layer',
  barrow: 'usual load of a barrow',
  'gate-clearance': 'usual clearance under a gate or door',
  'old-paving': 'usual density of old paving'
};

/** What is the same in every country. */
const EVERYWHERE: readonly Usual[] = ['saw-cut', 'old-paving'];

const MEASURES: Readonly<Partial<Record<Usual, Wanted>>> = { barrow: 'm3', 'old-paving': 'kg/m3' };

/** The usual values as they ship, each read once. */
export class Usuals {
  private readonly context: Context;
  private readonly shipped: SpecText;
  private readonly known = new Map<string, Given | undefined>();

  constructor(context: Context, shipped: SpecText) {
    this.context = context;
    this.shipped = shipped;
  }

  of(what: Usual, country: Country | undefined): Given | undefined {
    const name = EVERYWHERE.includes(what) ? `usual-${what}` : `usual-${what}-${country ?? 'north-america'}`;
    if (!this.known.has(name)) this.known.set(name, this.read(name, what));
    return this.known.get(name);
  }

  private read(name: string, what: Usual): Given | undefined {
    const node = this.shipped.parsed.root.elements.filter(ast.isLet).find(other => other.name === name);
    const given =
      node && this.context.given(this.shipped, `let:${name}`, node.value as Expression, MEASURES[what] ?? 'm');
    const because: Assumed = { because: `the ${WORDS[what]}; the job does not say` };
    return given && assumed(given, because);
  }
}
