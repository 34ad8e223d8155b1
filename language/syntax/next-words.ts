import { GrammarAST, type Grammar } from 'langium';
import { JobSpecGrammar } from './generated/grammar.ts';
import type { BlockName } from './words.ts';

/** Something that can stand next in a statement. */
export interface Next {
  /** A word or sign of the language, a name that leads to a thing, or something that is written freely. */
  readonly what: 'word' | 'name' | 'free';
  /** The word itself; the kind of thing that the name leads to (`Mark`, `Material`); or `ID`, `NUMBER`, `MEASURE`, `BY`, `STRING`. */
  readonly is: string;
  /** The rule of the grammar that it stands in. */
  readonly rule: string;
  /** The properties that it is read into, from the statement inwards: `Layer.thickness`, `Quantity.parts`, `Part.number`. */
  readonly path: readonly string[];
}

export interface NextWords {
  readonly next: readonly Next[];
  /** The statement may end here. */
  readonly complete: boolean;
}

/**
 * What the grammar lets follow in a statement of a block; `kinds` are the kinds of its words so far (the words
 * themselves where they are keywords). Nothing can follow where the words already make no sense.
 */
export function nextWords(block: BlockName, kinds: readonly string[]): NextWords {
  const walk = new GrammarWalk(kinds);
  const rule = (JobSpecGrammar() satisfies Grammar).rules.find(({ name }) => name === STATEMENTS[block])!;
  const ends = walk.rule(rule, new Set([0]), []);
  return { next: walk.next, complete: ends.has(kinds.length) };
}

const STATEMENTS: Readonly<Record<BlockName, string>> = {
  spec: 'Element',
  job: 'JobItem',
  site: 'SiteItem',
  unit: 'UnitItem',
  material: 'MaterialItem',
  'soil-kind': 'SoilItem',
  'side-kind': 'SideItem',
  bond: 'BondItem',
  existing: 'ExistingItem',
  area: 'AreaItem',
  edges: 'EdgeItem',
  'kept-out': 'KeptOutItem',
  inset: 'KeptOutItem',
  heights: 'HeightsOf',
  drain: 'DrainItem',
  pipe: 'PipeItem',
  gate: 'GateItem',
  'level-sheet': 'LevelSheetItem',
  log: 'LogLine',
  supplier: 'SupplierItem',
  price: 'PriceItem',
  variant: 'VariantItem',
  source: 'SourceItem',
  rulebook: 'RulebookItem',
  rule: 'RuleItem',
  example: 'Element',
  rate: 'RateItem'
};

type Places = ReadonlySet<number>;

/** Follows all readings of the words at once: from the places that a part can begin at to those that it can end at. */
class GrammarWalk {
  readonly next: Next[] = [];
  private readonly kinds: readonly string[];
  /** The rule that is being followed. */
  private readonly rules: string[] = [];

  constructor(kinds: readonly string[]) {
    this.kinds = kinds;
  }

  rule(rule: GrammarAST.AbstractRule, from: Places, path: readonly string[]): Places {
    this.rules.push(rule.name);
    const ends = GrammarAST.isInfixRule(rule)
      ? this.sum(rule, from, path)
      : this.element((rule as GrammarAST.ParserRule).definition, from, path);
    this.rules.pop();
    return ends;
  }

  /** `a + b * c`: values with signs between them. */
  private sum({ call, operators }: GrammarAST.InfixRule, from: Places, path: readonly string[]): Places {
    const signs = operators.precedences.flatMap(precedence => precedence.operators);
    return this.repeated(from, false, starts => {
      const isFirst = starts === from;
      const afterSign = isFirst ? starts : union(signs.map(sign => this.word(sign.value, starts, path)));
      return this.element(call, afterSign, path);
    });
  }

  private element(element: GrammarAST.AbstractElement, from: Places, path: readonly string[]): Places {
    if (from.size === 0) return from;
    const { cardinality } = element;
    if (cardinality === '*' || cardinality === '+')
      return this.repeated(from, cardinality === '*', starts => this.once(element, starts, path));
    const ends = this.once(element, from, path);
    return cardinality === '?' ? union([from, ends]) : ends;
  }

  private repeated(from: Places, mayBeAbsent: boolean, once: (starts: Places) => Places): Places {
    const ends = new Set(mayBeAbsent ? from : []);
    for (let starts = from; starts.size > 0;) {
      const fresh = [...once(starts)].filter(end => !ends.has(end));
      for (const end of fresh) ends.add(end);
      starts = new Set(fresh);
    }
    return ends;
  }

  private once(element: GrammarAST.AbstractElement, from: Places, path: readonly string[]): Places {
    if (GrammarAST.isKeyword(element)) return this.word(element.value, from, path);
    if (GrammarAST.isAssignment(element))
      return this.element(element.terminal, from, [...path, `${this.rules.at(-1)!}.${element.feature}`]);
    if (GrammarAST.isCrossReference(element)) {
      const written = (element.terminal as GrammarAST.RuleCall).rule.$refText;
      return this.match(written, from, { what: 'name', is: element.type.$refText, path });
    }
    if (GrammarAST.isRuleCall(element)) {
      const called = element.rule.ref!;
      if (!GrammarAST.isTerminalRule(called)) return this.rule(called, from, path);
      return this.match(called.name, from, { what: 'free', is: called.name, path });
    }
    const { elements } = element as GrammarAST.Group | GrammarAST.Alternatives;
    if (GrammarAST.isAlternatives(element)) return union(elements.map(part => this.element(part, from, path)));
    return elements.reduce((starts, part) => this.element(part, starts, path), from);
  }

  private word(word: string, from: Places, path: readonly string[]): Places {
    return this.match(word, from, { what: 'word', is: word, path });
  }

  private match(kind: string, from: Places, next: Omit<Next, 'rule'>): Places {
    if (from.has(this.kinds.length)) this.next.push({ ...next, rule: this.rules.at(-1)! });
    return new Set([...from].filter(at => this.kinds[at] === kind).map(at => at + 1));
  }
}

function union(all: readonly Places[]): Places {
  return new Set(all.flatMap(places => [...places]));
}
