import type { Breach, RuleInputs } from './rule.ts';
import { alike, sidesInWords } from './sides.ts';

/** Sides where nothing else holds the paving have edging. */
export function openEdges({ area }: RuleInputs): Breach[] {
  const open = area.edges.filter(edge => edge.meets !== undefined && !edge.meets.holds && edge.edging === undefined);
  return alike(open, edge => edge.meets!.name).map(edges => {
    const several = new Set(edges.map(edge => edge.name)).size > 1;
    const sides = sidesInWords(edges);
    return {
      message: `${sides.charAt(0).toUpperCase()}${sides.slice(1)} of ${area.name} ${several ? 'meet' : 'meets'} ${edges[0]!.meets!.name} and ${several ? 'have' : 'has'} no edging: nothing holds the units there.`,
      target: area.key,
      at: edges[0]!.key,
      values: []
    };
  });
}
