import type { ChangePlaces } from '../../comparing/contract.ts';
import type { Place } from '../../findings/finding.ts';

/** A finding is a place too: of either only the place. */
export function placesJson({ before, after }: ChangePlaces): { readonly places?: ChangePlaces } {
  if (before === undefined && after === undefined) return {};
  return { places: { ...(before && { before: placeJson(before) }), ...(after && { after: placeJson(after) }) } };
}

function placeJson({ file, line, column, endLine, endColumn }: Place): Place {
  return { file, line, column, endLine, endColumn };
}
