import type { AstNode } from 'langium';
import type { ParsedText } from '../syntax/parse.ts';
import {
  isArea,
  isBond,
  isDrain,
  isExisting,
  isGate,
  isKeptOut,
  isLet,
  isMark,
  isMaterial,
  isPathLine,
  isPipe,
  isRate,
  isRoute,
  isSectionLine,
  isSideKind,
  isSite,
  isBenchmark,
  isRule,
  isRulebook,
  isSoilKind,
  isSource,
  isSupplier,
  isVariant,
  isUnit
} from '../syntax/generated/ast.ts';
import type { Benchmark } from '../syntax/generated/ast.ts';

/** A text under the name by which its readers know it. */
export interface SpecText {
  /** The file as findings show it. */
  readonly file: string;
  readonly parsed: ParsedText;
}

/** Kinds of things that have names; each kind has names of its own. */
export type Kind =
  | 'let'
  | 'point'
  | 'line'
  | 'section'
  | 'unit'
  | 'material'
  | 'soil-kind'
  | 'side-kind'
  | 'bond'
  | 'existing'
  | 'area'
  | 'kept-out'
  | 'drain'
  | 'pipe'
  | 'gate'
  | 'route'
  | 'benchmark'
  | 'supplier'
  | 'source'
  | 'rulebook'
  | 'rule'
  | 'rate'
  | 'variant';

export const KIND_WORDS: Readonly<Record<Kind, string>> = {
  let: 'value',
  point: 'point',
  line: 'line',
  section: 'section',
  unit: 'unit',
  material: 'material',
  'soil-kind': 'kind of soil',
  'side-kind': 'kind of side',
  bond: 'bond',
  existing: 'existing thing',
  area: 'area',
  'kept-out': 'box, pit or inset',
  drain: 'drain',
  pipe: 'pipe',
  gate: 'gate or door',
  route: 'route',
  benchmark: 'benchmark',
  supplier: 'supplier',
  source: 'source',
  rulebook: 'rulebook',
  rule: 'rule',
  rate: 'rate',
  variant: 'variant'
};

export interface Declared {
  readonly kind: Kind;
  readonly name: string;
  readonly node: AstNode;
  readonly text: SpecText;
}

/** What one text declares, by kind and name; of a name declared twice the first counts. */
export interface NamesOfText {
  readonly byName: ReadonlyMap<string, Declared>;
  readonly all: readonly Declared[];
  readonly again: readonly { readonly declared: Declared; readonly first: Declared }[];
  /** The rulebook that a rule belongs to: the last one above it. */
  readonly bookOf: ReadonlyMap<AstNode, AstNode>;
}

/** The maps stay with the tree they were made from and go with it. */
const mapsOfTrees = new WeakMap<AstNode, NamesOfText>();

export function namesOf(text: SpecText): NamesOfText {
  const known = mapsOfTrees.get(text.parsed.root);
  if (known !== undefined) return known;
  const byName = new Map<string, Declared>();
  const all: Declared[] = [];
  const again: { declared: Declared; first: Declared }[] = [];
  for (const [kind, node] of declarations(text)) {
    // A name that is still being typed is no name.
    if (typeof node.name !== 'string') continue;
    const declared: Declared = { kind, name: node.name, node, text };
    const first = byName.get(`${kind} ${node.name}`);
    if (first === undefined) byName.set(`${kind} ${node.name}`, declared);
    else again.push({ declared, first });
    all.push(declared);
  }
  const names: NamesOfText = { byName, all, again, bookOf: booksOfRules(text) };
  mapsOfTrees.set(text.parsed.root, names);
  return names;
}

function booksOfRules(text: SpecText): ReadonlyMap<AstNode, AstNode> {
  const books = new Map<AstNode, AstNode>();
  let book: AstNode | undefined;
  for (const node of text.parsed.root.elements) {
    if (isRulebook(node)) book = node;
    else if (isRule(node) && book !== undefined) books.set(node, book);
  }
  return books;
}

type Named = AstNode & { name?: string };

function* declarations(text: SpecText): Generator<[Kind, Named]> {
  for (const node of text.parsed.root.elements) {
    if (isSite(node))
      for (const item of node.items) if (isBenchmark(item)) yield ['benchmark', item satisfies Benchmark];
    if (isLet(node)) yield ['let', node];
    else if (isMark(node)) yield ['point', node];
    else if (isPathLine(node)) yield ['line', node];
    else if (isSectionLine(node)) yield ['section', node];
    else if (isUnit(node)) yield ['unit', node];
    else if (isMaterial(node)) yield ['material', node];
    else if (isSoilKind(node)) yield ['soil-kind', node];
    else if (isSideKind(node)) yield ['side-kind', node];
    else if (isBond(node)) yield ['bond', node];
    else if (isExisting(node)) yield ['existing', node];
    else if (isArea(node)) yield ['area', node];
    else if (isKeptOut(node)) yield ['kept-out', node];
    else if (isDrain(node)) yield ['drain', node];
    else if (isPipe(node)) yield ['pipe', node];
    else if (isGate(node)) yield ['gate', node];
    else if (isRoute(node)) yield ['route', node];
    else if (isSupplier(node)) yield ['supplier', node];
    else if (isSource(node)) yield ['source', node];
    else if (isRulebook(node)) yield ['rulebook', node];
    else if (isRule(node)) yield ['rule', node];
    else if (isRate(node)) yield ['rate', node];
    else if (isVariant(node)) yield ['variant', node];
  }
}

/**
 * Finds names by map in the texts that a text may see, in this order: the text itself, what it uses, what ships.
 * Counts its look-ups.
 */
export class Names {
  lookUps = 0;
  private readonly visible: ReadonlyMap<SpecText, readonly SpecText[]>;
  private readonly used = new Set<AstNode>();
  private readonly suggestions = new Map<SpecText, Map<string, readonly string[]>>();

  constructor(visible: ReadonlyMap<SpecText, readonly SpecText[]>) {
    this.visible = visible;
  }

  find(from: SpecText, kind: Kind, name: string): Declared | undefined {
    const declared = this.peek(from, kind, name);
    if (declared !== undefined) this.used.add(declared.node);
    return declared;
  }

  /** Tells that something uses it. */
  use({ node }: Declared): void {
    this.used.add(node);
  }

  /** The same for a message: what is only named there is not used. */
  peek(from: SpecText, kind: Kind, name: string): Declared | undefined {
    for (const text of this.visible.get(from) ?? [from]) {
      this.lookUps++;
      const declared = namesOf(text).byName.get(`${kind} ${name}`);
      if (declared !== undefined) return declared;
    }
    return undefined;
  }

  /** An area of any file of the job: neighbours meet across files, whichever of them uses the other. */
  neighbour(name: string): Declared | undefined {
    return this.anywhere(['area'], name);
  }

  /** A thing of any file of the job: what is set aside may stand in a file of its own. */
  anywhere(kinds: readonly Kind[], name: string): Declared | undefined {
    for (const kind of kinds)
      for (const text of this.visible.keys()) {
        this.lookUps++;
        const declared = namesOf(text).byName.get(`${kind} ${name}`);
        if (declared !== undefined) return declared;
      }
    return undefined;
  }

  /**
   * What a price is of: a thing of the text or of what it uses, else of any file of the job, for price lists are shared, and
   * last what ships by that name.
   */
  priced(from: SpecText, kinds: readonly Kind[], name: string): Declared | undefined {
    const visible = this.visible.get(from) ?? [from];
    for (const text of [...visible.slice(0, -1), ...this.visible.keys(), ...visible.slice(-1)])
      for (const kind of kinds) {
        this.lookUps++;
        const declared = namesOf(text).byName.get(`${kind} ${name}`);
        if (declared !== undefined) return declared;
      }
    return undefined;
  }

  /** The areas of all files of the job. */
  areas(): Declared[] {
    return [...this.visible.keys()].flatMap(text => namesOf(text).all.filter(({ kind }) => kind === 'area'));
  }

  isUsed(node: AstNode): boolean {
    return this.used.has(node);
  }

  /** Everything of the kinds that the text may see, for suggestions. */
  known(from: SpecText, kinds: readonly Kind[]): readonly string[] {
    const asked = kinds.join(' ');
    const byKinds = this.suggestions.get(from) ?? new Map<string, readonly string[]>();
    this.suggestions.set(from, byKinds);
    let known = byKinds.get(asked);
    if (known === undefined) {
      // Shipped values are for the tool; nobody writes their names.
      const texts = this.visible.get(from) ?? [from];
      const all = (kinds.includes('let') ? texts.slice(0, -1) : texts).flatMap(text => namesOf(text).all);
      known = [...new Set(all.filter(({ kind }) => kinds.includes(kind)).map(({ name }) => name))].slice(
        0,
        MOST_SUGGESTIONS
      );
      byKinds.set(asked, known);
    }
    return known;
  }
}

/** Suggestions are looked for among so many names: in a longer list the nearest says little. */
const MOST_SUGGESTIONS = 500;
