import type { System } from '../job/job.ts';
import { printLength, printThickness } from './print.ts';

/** How heights are printed: as the job's system has it, or as a sheet asks. */
export type LevelStyle = 'millimetres' | 'inches' | 'decimal-feet';

/** What heights are told against. */
export interface LevelDatum {
  readonly benchmark: string;
  /** Its height, m; nought where no benchmark has one. */
  readonly z: number;
  /** Heights are told as they are; else as below or above the benchmark. */
  readonly fromNought: boolean;
}

const FOOT = 0.3048;

/** The nearest thousandth of a metre, or hundredth of a foot: halves go up, as the decimal number they stand for does. */
const HAIR = 1e-9;

export function levelStyleOf(system: System): LevelStyle {
  return system === 'imperial' ? 'inches' : 'millimetres';
}

/** A height as it is told: `10.095 m`, `98.85 ft`, `4 1/16 in below`, `level`. The benchmark stands in the table's head. */
export function printLevel(z: number, datum: LevelDatum, style: LevelStyle): string {
  if (datum.fromNought) return absolute(z, style);
  const above = z - datum.z;
  const size = printDrop(Math.abs(above), style);
  if (Number.parseFloat(size) === 0) return style === 'decimal-feet' ? size : 'level';
  return `${size} ${above < 0 ? 'below' : 'above'}`;
}

/** A difference of heights without its direction: `87 mm`, `4 1/16 in`, `0.34 ft`. */
export function printDrop(metres: number, style: LevelStyle): string {
  switch (style) {
    case 'millimetres':
      return `${rounded(metres * 1000, 0)} mm`;
    case 'inches':
      return printThickness(metres, 'imperial');
    case 'decimal-feet':
      return `${rounded(metres / FOOT, 2)} ft`;
  }
}

/** How a height is told: `10.095 m`, `4 1/16 in below door-sill`, `level with door-sill`. */
export function printLevelWithMark(z: number, datum: LevelDatum, style: LevelStyle): string {
  const level = printLevel(z, datum, style);
  if (datum.fromNought) return level;
  return Number.parseFloat(level) === 0 || level === 'level'
    ? `level with ${datum.benchmark}`
    : `${level} ${datum.benchmark}`;
}

function absolute(z: number, style: LevelStyle): string {
  switch (style) {
    case 'millimetres':
      return `${rounded(z, 3)} m`;
    case 'inches':
      return printLength(z, 'imperial');
    case 'decimal-feet':
      return `${rounded(z / FOOT, 2)} ft`;
  }
}

function rounded(value: number, places: number): string {
  const scale = 10 ** places;
  const size = Math.floor(Math.abs(value) * scale + 0.5 + HAIR) / scale;
  return `${value < 0 && size > 0 ? '-' : ''}${size.toFixed(places)}`;
}
