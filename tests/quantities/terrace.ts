import type { Area } from '../../language/job/job.ts';
import {
  area,
  type AreaWords,
  box,
  corners,
  FOOT,
  given,
  HOUSE_WALL,
  INCH,
  layer,
  material,
  paving,
  rectangle,
  SITE,
  unit
} from './jobs.ts';

/** The terrace of the wished-for spec with its valve box, corners as they were fitted. */
export function terrace(more: AreaWords = {}): Area {
  const outline = corners(
    [0, 0],
    [18 * FOOT + 6 * INCH, 0],
    [18 * FOOT + 5.4375 * INCH, 12 * FOOT + 7.875 * INCH],
    [-2.375 * INCH, 12 * FOOT + 8.625 * INCH]
  );
  const [boxWidth, boxDepth] = [20 * INCH, 14 * INCH];
  const [boxX, boxY] = [6 * FOOT + 2 * INCH - boxWidth / 2, 3 * FOOT + INCH - boxDepth / 2];
  const strip = { edging: material('spiked-strip', 'edging', { width: given(0), spikesEvery: given(2 * FOOT) }) };
  return area(
    outline,
    {
      name: 'terrace',
      keptOut: [box('valves', rectangle(boxWidth, boxDepth, boxX, boxY))],
      paving: paving(unit(15.875 * INCH, 15.875 * INCH, 2 * INCH), INCH / 8),
      jointFiller: material('plain-sand', 'joint-filler', { loose: given(1500) }),
      layers: [layer('bed', INCH), layer('base', 6 * INCH, { past: given(6 * INCH) })],
      geotextile: material('separation-cloth', 'geotextile'),
      site: {
        ...SITE,
        soil: { name: 'clay', swell: given(0.43), density: given(1900), heavesInFrost: true },
        drains: 'poorly',
        winters: 'freeze',
        topsoil: given(5 * INCH)
      },
      ...more
    },
    [{ meets: HOUSE_WALL }, strip, strip, { meets: { name: 'old-walk', openGround: false, holds: true } }]
  );
}
