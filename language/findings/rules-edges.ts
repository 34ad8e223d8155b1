import type { Edge } from '../job/job.ts';
import type { RawFix } from './finding.ts';
import type { Breach, RuleInputs } from './rule.ts';
import { alike, sidesFirst, usualEdgings } from './sides.ts';

/** Sides where nothing else holds the paving have edging. */
export function openEdges({ area }: RuleInputs): Breach[] {
  const open = area.edges.filter(edge => edge.meets !== undefined && !edge.meets.holds && edge.edging === undefined);
  return alike(open, edge => edge.meets!.name).map(edges => {
    const { sides, several } = sidesFirst(edges);
    return {
      message: `${sides} of ${area.name} ${several ? 'meet' : 'meets'} ${edges[0]!.meets!.name} and ${several ? 'have' : 'has'} no edging: nothing holds the units there.`,
      target: area.key,
      at: edges[0]!.key,
      values: [],
      fixes: usualEdgings(area.edges).map(edging => edgingFix(edges, edging))
    };
  });
}

function edgingFix(edges: readonly Edge[], edging: string): RawFix {
  const clause = `edging ${edging}`;
  const edits = edges.map(({ key }) => ({ behind: key, text: `, ${clause}` }));
  return { title: `Write \`${clause}\``, edits };
}
