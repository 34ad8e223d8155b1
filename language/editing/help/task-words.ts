import type { TaskWord } from '../../job/work.ts';
import { help, type Helps, type WordHelp } from './help.ts';

/** The tasks that follow from a spec. */
export const TASK_HELP: Readonly<Record<TaskWord, WordHelp>> = {
  locate: help(
    'Having pipes and lines located, before anything is dug',
    'Public **and** private lines: public locating does not mark private ones. It takes days: ask in time.'
  ),
  'set-out': help('Setting out: points, lines and heights on the ground'),
  'break-out': help('Taking up old paving', 'Cut wet, with lungs, eyes and ears protected.'),
  dig: help('Digging, by hand or by machine'),
  'cart-away': help('Wheeling and loading what was dug'),
  'soft-spots': help('Digging out soft spots and filling them'),
  drains: help('Setting channels and gullies, and laying their pipes'),
  geotextile: help('Laying the cloth under the base'),
  base: help('Spreading and compacting the base, layer by layer'),
  edging: help('Setting edging: kerbs, or a strip on spikes'),
  concrete: help('Mixing and placing concrete', 'Wet concrete burns skin: gloves, boots, and wash it off at once.'),
  bed: help('Spreading and screeding the bed'),
  laying: help('Laying whole units'),
  cutting: help(
    'Marking and cutting units',
    'Cut wet, with lungs, eyes and ears protected: the dust scars lungs for good.'
  ),
  boxes: help('Fitting the frames and lids of boxes, and paving their trays'),
  joints: help('Filling the joints'),
  vibrating: help('Going over the paving with the plate'),
  'second-sweeping': help('Filling joints a second time, when the sand has settled'),
  'clean-up': help('Clearing the site')
} satisfies Helps;
