import type { JointWidths } from './bonds/course-bond.ts';

/** Whole units between two lines. */
export interface Fit {
  readonly units: number;
  /** Width of joint with which so many fit, m; less than nought where they overlap. */
  readonly joint: number;
  /** It lies within the limits. */
  readonly fits: boolean;
}

interface Limits {
  readonly width: number;
  readonly least: number;
  readonly most: number;
}

/** In metres: a limit met exactly is kept. */
const ROUNDING = 1e-6;

/** The width of joint nearest to the one asked for with which whole units fill a distance from face to face, metres. */
export function fitBetween(distance: number, size: number, { width, least, most }: Limits): Fit {
  const about = Math.max(1, Math.round((distance + width) / (size + width)));
  const fits = [about - 1, about, about + 1]
    .filter(units => units > 0)
    .map((units): Fit => {
      const joint = units === 1 ? width : (distance - units * size) / (units - 1);
      const isWhole = units > 1 || Math.abs(distance - size) <= ROUNDING;
      return { units, joint, fits: isWhole && joint >= least - ROUNDING && joint <= most + ROUNDING };
    });
  const off = ({ joint }: Fit): number => Math.abs(joint - width);
  return fits.reduce((best, fit) => {
    if (fit.fits !== best.fits) return fit.fits ? fit : best;
    return off(fit) < off(best) ? fit : best;
  });
}

export function sameJoints(width: number): JointWidths {
  return { along: width, across: width };
}
