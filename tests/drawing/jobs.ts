import { planOfJob } from '../../language/views/plan/plan-of-job.ts';
import type { PlanInput } from '../../language/views/plan/plan-input.ts';
import type { Evaluation } from '../../language/paving.ts';
import { evaluated } from '../language/in-memory.ts';

/*
 * Small jobs as they are written, each with something that is hard to draw.
 */

function job(title: string, rest: string): string {
  return `job "${title}" { rules britain, show metric }
site { soil sand, winters mild, benchmark sill, ground level with sill }
unit block { size 200 x 100 x 60 mm, colour red }
unit dark { size 200 x 100 x 60 mm, colour charcoal }
unit sett { size 80 x 80 x 60 mm, colour grey }
material kerb { role edging, width 50 mm }
${rest}`;
}

/** An area with a kerb all round. */
function court(title: string, outline: string, laid: string, others = ''): string {
  return job(
    title,
    `area court {
  outline ${outline}
  traffic foot
  ${laid.replaceAll('\n', '\n  ')}
  base type-1 150 mm
  edges {
    all round meets lawn, edging kerb
  }
}
${others}`
  );
}

export const JOBS: Readonly<Record<string, string>> = {
  herringbone: job(
    'Herringbone forecourt',
    `area forecourt {
  outline rectangle 2.7 x 2.2 m
  traffic foot
  paving block in herringbone-45, joints 3 mm
  start from right
  border dark in soldier-course all round except near, mitred
  border dark in sailor-course round compass
  band dark in sailor-course across near at 600 mm
  base type-1 150 mm
  edges {
    near meets house-wall
    the rest meets lawn, edging kerb
  }
}
inset compass in forecourt {
  circle 1.2 m across, centre (1.6, 1) m
  paving sett in rings, joints 5 mm from 4 to 20 mm
}`
  ),
  hexagons: court(
    'Hexagon terrace',
    'rectangle 2.2 x 1.6 m',
    'paving hex in hexagons, joints 4 mm\nborder dark in sailor-course all round, butted',
    'unit hex { size 231 x 200 x 60 mm, shape hexagon, colour buff }'
  ),
  'random courses': court(
    'Plank walk',
    'rectangle 3.4 x 1.5 m',
    'paving long, middle, short in planks, joints 3 mm',
    `unit long { size 600 x 150 x 60 mm, colour grey }
unit middle { size 450 x 150 x 60 mm, colour light-grey }
unit short { size 300 x 150 x 60 mm, colour charcoal }
bond planks { random-courses, seed 7, joints-apart 75 mm }`
  ),
  'three sizes': court(
    'Three sizes',
    'rectangle 3.4 x 2.5 m',
    'paving large, long, small in three-sizes, joints 5 mm',
    `unit large { size 595 x 595 x 50 mm, colour grey }
unit long { size 595 x 295 x 50 mm, colour charcoal }
unit small { size 295 x 295 x 50 mm, colour buff }`
  ),
  'basket weave': court('Basket weave yard', 'rectangle 2.3 x 1.9 m', 'paving block in basket-weave, joints 3 mm'),
  corner: court(
    'Corner with a box',
    'walk from (0, 0), right 3.6 m, up 1.4 m, left 1.7 m, up 1.5 m, left 1.9 m, back',
    'paving block in running-bond, joints 3 mm\nborder dark in sailor-course along leg 1 and leg 2\nborder dark in sailor-course round valves',
    'box valves in court {\n  rectangle 450 x 450 mm, corner (0.75, 0.72) m\n}'
  ),
  rings: court(
    'Round seat',
    'circle 2.4 m across, centre (1.5, 1.5) m',
    'paving sett in rings, joints 5 mm from 4 to 20 mm\nborder dark in soldier-course all round'
  ),
  broken: job(
    'Half <measured> yard',
    `area sound {
  outline rectangle 1.2 x 1 m
  traffic foot
  paving block in running-bond
}
area crossed {
  outline A to B to C to D
  traffic foot
  paving block in running-bond
}
point A at (2, 0) m
point B at (3.5, 1) m
point C at (3.5, 0) m
point D at (2, 1) m
area tight {
  outline circle 500 mm across, centre (4.5, 0.5) m
  traffic foot
  paving block in running-bond
  border block in soldier-course all round
}
area lost {
  outline rectangle 1 x 1 m, corner (6, 0) m
  paving blok in running-bond
}`
  )
};

/** What a job comes to, and the plan of it. */
export async function planned(text: string): Promise<PlanInput> {
  return planOf(await evaluated(text));
}

export function planOf({ job, numbers }: Evaluation): PlanInput {
  if (job === undefined || numbers === undefined) throw new Error('A job without numbers.');
  return planOfJob(job, numbers);
}
