import type { Breach, RuleInputs } from './rule.ts';

/** Sides where nothing else holds the paving have edging. */
export function openEdges({ area }: RuleInputs): Breach[] {
  return area.edges
    .filter(edge => edge.meets !== undefined && !edge.meets.holds && edge.edging === undefined)
    .map(edge => ({
      message: `Side ${edge.name} of ${area.name} meets ${edge.meets!.name} and has no edging: nothing holds the units there.`,
      target: area.key,
      at: edge.key,
      values: []
    }));
}
