import { help, type Helps } from './help.ts';

const ENDS = 'The base ends here, and it holds the paving: no edging.';
const RUNS_ON = 'The base runs on past the edge here, and the side needs edging.';

export const SIDE_LORE: Helps = {
  'house-wall': help(
    'The wall of a house',
    ENDS,
    'Keep the finish below the damp course or siding: 150 mm in Britain (Approved Document C), 6 in in North America (from memory). Never dig below a footing without a licensed engineer.'
  ),
  'garden-wall': help('A wall that stands by itself', ENDS, 'Never dig below its footing.'),
  steps: help('Steps that stay', ENDS),
  kerb: help('A kerb that is there already', ENDS),
  road: help(
    'A road',
    ENDS,
    'The edge of asphalt alone does not hold units under wheels (an edge-restraint bulletin).'
  ),
  'existing-paving': help('Paving that stays', ENDS),
  'concrete-slab': help('A slab of concrete that stays', ENDS),
  'drain-channel': help('A drain channel, set in concrete', ENDS),
  fence: help('A fence on posts', RUNS_ON),
  lawn: help('Lawn', RUNS_ON),
  planting: help(
    'A bed of plants',
    RUNS_ON,
    'Roots over 1 in (25 mm) thick hold a tree up: ask before cutting (common practice).'
  ),
  gravel: help('Loose gravel', RUNS_ON),
  'bare-ground': help('Bare ground', RUNS_ON),
  footway: help('The footway of a road', ENDS, 'Work within it needs leave of the road authority.'),
  boundary: help('The boundary of the plot', RUNS_ON, 'Water of the paving stays on its own side of it.'),
  neighbour: help('Ground of a neighbour', RUNS_ON, 'Water of the paving must not run onto it.')
};
