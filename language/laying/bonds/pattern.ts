import type { CourseFrame } from '../../geometry/index.ts';
import type { Lattice } from './lattice.ts';

/** All units of one place in a bond's repeating cell. */
export interface UnitLattice extends Lattice {
  /** Key of the unit. */
  readonly unit: string;
  /** The unit's length lies across the courses. */
  readonly standing: boolean;
}

/** A bond as lattices in a frame: those of its units, and those of the joints between them. */
export interface BondPattern {
  readonly frame: CourseFrame;
  readonly units: readonly UnitLattice[];
  /** Rectangles of joint that repeat; where the bond is plain courses, the joints are what lies between the units. */
  readonly joints: readonly Lattice[] | 'between';
}
