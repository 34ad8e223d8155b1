import type { Place } from '../findings/finding.ts';
import { worldAt } from '../lowering/examples.ts';
import type { SpecText } from '../lowering/names.ts';
import type { Look } from '../paving.ts';
import { meetsOf, statementPathAt } from '../syntax/statement-tree.ts';
import { nameAt } from './names-at.ts';
import { placesIn } from './references.ts';
import { endOf, placeBetween, startOf } from './words.ts';

export interface Highlight {
  readonly place: Place;
  readonly isDeclaration: boolean;
}

/** The places in a text that lead to the same thing as the name at an offset; of a side, the same side of its area. */
export function highlightsAt(look: Look, offset: number): Highlight[] {
  const at = nameAt(look, offset);
  if (at === undefined) return sidesAt(look.text, offset).map(place => ({ place, isDeclaration: false }));
  if (at.declared === undefined) return [{ place: at.place, isDeclaration: false }];
  return placesIn(worldAt(look, offset), at.declared).map(({ place, isDeclaration }) => ({ place, isDeclaration }));
}

/** `near` and `far` are no names of things: they mean a side of the area whose edges they stand in. */
function sidesAt({ parsed, file }: SpecText, offset: number): Place[] {
  const { tokens } = parsed;
  const edges = statementPathAt(parsed, offset).find(({ opens }) => opens === 'edges');
  if (edges === undefined) return [];
  const sides = edges.inside.flatMap(line => {
    const meets = meetsOf(tokens, line);
    return meets === line.end ? [] : tokens.slice(line.first, meets).filter(({ tokenType }) => tokenType.name === 'ID');
  });
  const at = sides.find(side => startOf(side) <= offset && offset <= endOf(side));
  return sides.filter(({ image }) => image === at?.image).map(side => placeBetween(file, side, side));
}
