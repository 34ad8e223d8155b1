import type { System } from '../../../job/job.ts';
import { type LevelDatum, type LevelStyle, printDrop, printLevel } from '../../../measures/print-level.ts';
import { type KeyOf, quantityOf } from '../../../quantities/catalogue.ts';
import type { LevelQuantities } from '../../../quantities/levels-stage.ts';
import { levelPlace } from '../../level-place.ts';
import type { Colours } from '../colours.ts';
import { table } from '../table.ts';

/** The columns of a level sheet, from the ground up. */
const FROM_THE_GROUND_UP = ['ground', 'digBottom', 'baseTop', 'screed', 'bedTop', 'asLaid', 'finish'] as const;

/** Drops from the string at the places of an area, layer by layer; nothing where no string is set. */
export function dropsText(
  levels: readonly LevelQuantities[],
  style: LevelStyle,
  system: System,
  colours: Colours
): string[] {
  if (!levels.some(({ belowString }) => belowString !== undefined)) return [];
  const shown = FROM_THE_GROUND_UP.filter(key => isShown(key, levels));
  const drop = (level: LevelQuantities, key: (typeof FROM_THE_GROUND_UP)[number]): string => {
    const z = level[key];
    if (z === undefined || level.belowString === undefined) return '';
    const down = level.belowString + level.finish - z;
    return down < 0 ? `${printDrop(-down, style)} above` : printDrop(down, style);
  };
  // A string to the fall lies equally far above everything that falls with it: that is told once.
  const even = shown.filter(
    key => key !== 'ground' && levels.every(level => drop(level, key) === drop(levels[0]!, key))
  );
  const columns = even.length === shown.filter(key => key !== 'ground').length ? even : shown;
  const rows =
    columns === even
      ? [['everywhere', ...columns.map(key => drop(levels[0]!, key))]]
      : levels.map(level => [placeText(level, system), ...columns.map(key => drop(level, key))]);
  const heads = columns.map(key => ({ head: wordsOf(key), right: true }));
  return table([{ head: 'Below the string' }, ...heads], rows, colours);
}

/** A table of heights at the places of an area; what is the same as the next column is left out where it is so all over. */
export function levelsText(
  levels: readonly LevelQuantities[],
  datum: LevelDatum,
  style: LevelStyle,
  system: System,
  colours: Colours
): string[] {
  const columns = FROM_THE_GROUND_UP.filter(key => isShown(key, levels));
  const parts = Math.max(0, ...levels.map(({ compactionTops }) => compactionTops.length));
  // The top of the last compaction layer is the base top.
  const layers = Array.from({ length: Math.max(0, parts - 1) }, (_, index) => index);
  const print = (z: number | undefined): string => (z === undefined ? '' : printLevel(z, datum, style));
  const heads = columns.flatMap(key => [
    { head: wordsOf(key), right: true },
    ...(key === 'digBottom' ? layers.map(index => ({ head: `Compacted ${index + 1}`, right: true })) : [])
  ]);
  const rows = levels.map(level => [
    placeText(level, system),
    ...columns.flatMap(key => [
      print(level[key]),
      ...(key === 'digBottom' ? layers.map(index => print(level.compactionTops[index])) : [])
    ])
  ]);
  return [
    ...table([{ head: 'At' }, ...heads], rows, colours),
    ...(levels.some(({ beyond }) => beyond === true)
      ? ['* beyond the heights measured: the ground is taken as high as at the nearest place']
      : [])
  ];
}

/** The place, with a star where the ground was not measured. */
function placeText(level: LevelQuantities, system: System): string {
  const place = levelPlace(level, system);
  return level.beyond === true ? `${place} *` : place;
}

/** Screed and bed, as laid and finish, are told apart only where the bed settles. */
function isShown(key: (typeof FROM_THE_GROUND_UP)[number], levels: readonly LevelQuantities[]): boolean {
  if (!levels.some(level => level[key] !== undefined)) return false;
  const same = key === 'bedTop' ? 'screed' : key === 'asLaid' ? 'finish' : undefined;
  return same === undefined || levels.some(level => Math.abs((level[key] ?? 0) - (level[same] ?? 0)) > SAME);
}

/** Heights that differ by less are one, m. */
const SAME = 1e-6;

function wordsOf(key: KeyOf<'level'>): string {
  const { head, words } = quantityOf('level', key);
  return head ?? words;
}
