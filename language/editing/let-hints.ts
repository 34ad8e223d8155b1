import type { Place } from '../findings/finding.ts';
import type { System } from '../job/job.ts';
import { occurrencesIn, type Occurrence } from '../lowering/occurrences.ts';
import type { Declared } from '../lowering/names.ts';
import { amountOfLet } from '../lowering/values.ts';
import type { Look } from '../paving.ts';
import { ChunkIndex } from '../syntax/chunk-index.ts';
import { statementTree, type Statement } from '../syntax/statement-tree.ts';
import { LONGEST_HINT, type Hint } from '../views/hints.ts';
import { printedIn } from './both-systems.ts';
import { placeOfToken } from './word-at.ts';

/**
 * What a named quantity comes to: behind the sum that it is declared as, and behind its name where an area or a thing
 * uses it, once in a statement. None where the text is broken, and none for what both systems write alike.
 */
export function letHints(look: Look, system: System): Hint[] {
  const { text, project } = look;
  const { parsed } = text;
  const chunks = new ChunkIndex(parsed);
  const names = occurrencesIn(text, project).filter(
    ({ kinds, declared, start }) => kinds.includes('let') && declared !== undefined && !chunks.isBroken(start)
  );
  const hint = (name: Occurrence, place: Place): Hint[] => {
    const value = valueOf(name.declared!, look, system);
    return value === undefined ? [] : [{ place, text: value, tooltip: `what ${name.name} comes to` }];
  };
  return statementsIn(statementTree(parsed)).flatMap(statement => {
    const { first, end, open, word } = statement;
    const last = parsed.tokens[(open ?? end) - 1]!;
    const from = parsed.tokens[first]!.startOffset;
    const inside = names.filter(({ start }) => start >= from && start <= last.startOffset);
    if (word === 'let' && statement.block === 'spec') {
      const declaration = inside.find(({ isDeclaration }) => isDeclaration);
      const isSum = inside.length > 1 || parsed.tokens.slice(first, end).some(({ image }) => /^[-+*/]$/.test(image));
      return declaration !== undefined && isSum ? hint(declaration, placeOfToken(text, last)) : [];
    }
    const once = new Map(inside.map((name): [string, Occurrence] => [name.name, name]).reverse());
    return [...once.values()].flatMap(name => hint(name, name.place));
  });
}

function valueOf(declared: Declared, { project }: Look, system: System): string | undefined {
  const amount = amountOfLet(declared, project);
  const printed = amount && printedIn(system, amount.value.valueOf(), amount.dimensions);
  const value = printed && `= ${printed.text}`;
  return value !== undefined && value.length <= LONGEST_HINT ? value : undefined;
}

/** Statements without the blocks inside them, and those inside, one after the other. */
function statementsIn(statements: readonly Statement[]): Statement[] {
  return statements.flatMap(statement => [statement, ...statementsIn(statement.inside)]);
}
