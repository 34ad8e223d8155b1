import { printFine, roundedUp } from '../../measures/print.ts';
import { stoneLayers } from '../../quantities/base-past.ts';
import type { RawFix } from '../finding.ts';
import { saying, type Length, writing } from '../limits.ts';
import { namesMet, usualEdgings } from '../sides.ts';
import { fromCatalogue } from './from-catalogue.ts';
import { type Judged, length, type Member, words } from './member.ts';
import { WALL_MEMBERS } from './wall-members.ts';

/** What rules can look at in a side of an area. */
export const SIDE_MEMBERS: readonly Member<'side'>[] = [
  { ...words('side', 'side', 'The name of the side'), read: ({ edge }) => [edge.name], at: ({ edge }) => edge.key },
  {
    ...words('side', 'meets', 'The kind or name of what it meets'),
    read: ({ edge }) => namesMet(edge),
    at: ({ edge }) => edge.key
  },
  {
    ...words('side', 'ground', 'Whether the ground beyond it is open', ['open', 'closed']),
    read: ({ edge }) => (edge.meets === undefined ? [] : [edge.meets.openGround ? 'open' : 'closed'])
  },
  {
    ...words('side', 'holds', 'What is held by what it meets', ['paving', 'nothing']),
    read: ({ edge }) => (edge.meets === undefined ? [] : [edge.meets.holds ? 'paving' : 'nothing'])
  },
  {
    ...words('side', 'edging', 'The name of its edging'),
    read: ({ edge }) => (edge.edging === undefined ? [] : [edge.edging.name]),
    at: ({ edge }) => edge.key,
    write: ({ edge }, to) =>
      typeof to === 'string'
        ? [{ title: `Write \`edging ${to}\``, edits: [{ behind: edge.key, text: `, edging ${to}` }] }]
        : []
  },
  {
    ...words('side', 'usual-edging', 'The edgings at the other sides of the area; else what is usual'),
    read: ({ judged }) => usualEdgings(judged.area.edges)
  },
  {
    ...words('side', 'edging-footing', 'What its edging stands on, where that is concrete', ['concrete']),
    read: ({ edge }) => (edge.edging?.concrete === undefined ? [] : ['concrete'])
  },
  {
    ...length('side', 'spike-spacing', 'Distance from spike to spike of its edging, where it has spikes'),
    read: ({ edge }) => edge.edging?.spikesEvery?.value,
    at: ({ edge }) => edge.key
  },
  {
    ...words('side', 'runs', 'Whether it is straight', ['straight', 'curved']),
    read: ({ judged, index }) => [judged.area.outline[index]?.arc === undefined ? 'straight' : 'curved']
  },
  {
    name: 'base-past-edging',
    of: 'side',
    measure: 'm',
    print: 'fine',
    describe: 'How far the base runs past the back of the edging',
    read: ({ judged, edge, index }) => judged.layers.overhangs[index]!.overhang - (edge.edging?.width?.value ?? 0),
    at: ({ edge }) => edge.key,
    write: ({ judged }, to) => (typeof to === 'string' ? [] : basePast(judged, to))
  },
  ...WALL_MEMBERS,
  ...fromCatalogue(
    'side',
    'edge',
    ({ judged, index }) => ({ ...judged.shapes.edgeLengths[index], ...judged.layers.overhangs[index] }),
    { at: ({ edge }) => edge.key }
  )
];

/** The base says for all sides how far it runs past the edging. */
function basePast({ area, system }: Judged, to: Length): RawFix[] {
  const [base] = stoneLayers(area.layers);
  if (base === undefined) return [];
  const past = printFine(roundedUp(to[system], system), system);
  if (base.past?.key !== undefined) return [writing(base.past.key, past)];
  return [saying(`${area.key}/${base.role}/past`, `${past} past the edging`)];
}
