import type { Place } from '../findings/finding.ts';
import type { System } from '../job/job.ts';
import { occurrencesWithin, type Occurrence } from '../lowering/occurrences.ts';
import type { Declared } from '../lowering/names.ts';
import { amountsOfLets } from '../lowering/values.ts';
import type { Look } from '../paving.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import { firstIndex, statementsWithin, type Statement } from '../syntax/statement-tree.ts';
import type { Span } from '../syntax/text-edit.ts';
import { LONGEST_HINT, type Hint } from '../views/hints.ts';
import { printedIn } from './both-systems.ts';
import { placeBetween, startOf } from './words.ts';

/**
 * What a named quantity comes to: behind the sum that it is declared as, and behind its name where an area or a thing
 * uses it, once in a statement. None where the text is broken, and none for what both systems write alike. Of the
 * top-level statements that lie between the offsets at least in part.
 */
export function letHints(look: Look, system: System, within: Span): Hint[] {
  const { text, project } = look;
  const { parsed, file } = text;
  const chunks = new ChunkIndex(parsed);
  const names = occurrencesWithin(text, project, within).filter(
    ({ kinds, declared, start }) => kinds.includes('let') && declared !== undefined && !chunks.isBroken(start)
  );
  if (names.length === 0) return [];
  const valueOf = valuesIn(look, system);
  const hint = (name: Occurrence, place: Place): Hint[] => {
    const value = valueOf(name.declared!);
    return value === undefined ? [] : [{ place, text: value, tooltip: `what ${name.name} comes to` }];
  };
  return statementsIn(statementsWithin(parsed, within)).flatMap(statement => {
    const { first, end, open, word } = statement;
    const last = parsed.tokens[(open ?? end) - 1]!;
    const inside = between(names, startOf(parsed.tokens[first]!), startOf(last));
    if (inside.length === 0) return [];
    if (word === 'let' && statement.block === 'spec') {
      const declaration = inside.find(({ isDeclaration }) => isDeclaration);
      const isSum = inside.length > 1 || parsed.tokens.slice(first, end).some(({ image }) => /^[-+*/]$/.test(image));
      return declaration !== undefined && isSum ? hint(declaration, placeBetween(file, last, last)) : [];
    }
    const once = new Map(inside.map((name): [string, Occurrence] => [name.name, name]).reverse());
    return [...once.values()].flatMap(name => hint(name, name.place));
  });
}

/** Each named quantity is worked out and printed once, however often it is used. */
function valuesIn({ project }: Look, system: System): (declared: Declared) => string | undefined {
  const amountOf = amountsOfLets(project);
  const known = new Map<Declared, string | undefined>();
  return declared => {
    if (!known.has(declared)) {
      const amount = amountOf(declared);
      const printed = amount && printedIn(system, amount.value.valueOf(), amount.dimensions);
      const value = printed && `= ${printed.text}`;
      known.set(declared, value !== undefined && value.length <= LONGEST_HINT ? value : undefined);
    }
    return known.get(declared);
  };
}

/** Names in their order that begin between two offsets, both included. */
function between(names: readonly Occurrence[], from: number, to: number): Occurrence[] {
  const first = firstIndex(names, ({ start }) => start >= from);
  const after = firstIndex(names, ({ start }) => start > to);
  return names.slice(first, after);
}

/** Statements without the blocks inside them, and those inside, one after the other. */
function statementsIn(statements: readonly Statement[]): Statement[] {
  return statements.flatMap(statement => [statement, ...statementsIn(statement.inside)]);
}
