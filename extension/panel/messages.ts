// What the editor's client and the panel say to each other, and the check of it on either side.
import { isAbsentOr, isCount, isDrawn, isFlag, isList, isNumber, isPlain, isString } from './checks.ts';
import type {
  ComparedWith,
  ShownColumn,
  ShownComparison,
  ShownRow,
  ShownSection,
  TextLocation,
  TextRange
} from '../../server/protocol.ts';

/** What is compared: kept by the editor, so that the panel comes back after the window is opened again. */
export interface About {
  /** The address of the newer text. */
  readonly file: string;
  readonly against: ComparedWith;
}

/** The panel's own words, in the language of the editor. */
export interface PanelWords {
  /** Heads the numbers of the edits behind a row. */
  readonly by: string;
  readonly edit: string;
  readonly nothingDiffers: string;
  readonly toText: string;
  readonly toOlderText: string;
}

export type ToPanel =
  | {
      readonly kind: 'comparison';
      readonly about: About;
      /** Comes back with what is opened, so that nothing of an older one is. */
      readonly version: number;
      readonly words: PanelWords;
      readonly comparison: ShownComparison;
    }
  | { readonly kind: 'problem'; readonly about: About; readonly problem: string };

export type Side = 'before' | 'after';

export type FromPanel =
  | { readonly kind: 'ready' }
  | {
      readonly kind: 'open';
      readonly version: number;
      /** Which of the sections, and of its rows, from nought: the panel names no address. */
      readonly section: number;
      readonly row: number;
      readonly side: Side;
    };

/** What the panel keeps. */
export interface PanelState {
  readonly about: About;
  readonly scroll: number;
}

// ---- checks ----

export function isToPanel(value: unknown): value is ToPanel {
  if (!isPlain(value) || !isAbout(value['about'])) return false;
  if (value['kind'] === 'problem') return isString(value['problem']);
  return (
    value['kind'] === 'comparison' &&
    isCount(value['version']) &&
    isWords(value['words']) &&
    isComparison(value['comparison'])
  );
}

export function isFromPanel(value: unknown): value is FromPanel {
  if (!isPlain(value)) return false;
  if (value['kind'] === 'ready') return true;
  const isSide = value['side'] === 'before' || value['side'] === 'after';
  return value['kind'] === 'open' && isSide && [value['version'], value['section'], value['row']].every(isCount);
}

export function isPanelState(value: unknown): value is PanelState {
  return isPlain(value) && isAbout(value['about']) && isNumber(value['scroll']);
}

function isAbout(value: unknown): value is About {
  if (!isPlain(value) || !isString(value['file'])) return false;
  const { against } = value;
  return isPlain(against) && (isString(against['revision']) || isString(against['uri']));
}

function isWords(value: unknown): value is PanelWords {
  if (!isPlain(value)) return false;
  return ['by', 'edit', 'nothingDiffers', 'toText', 'toOlderText'].every(word => isString(value[word]));
}

function isComparison(value: unknown): value is ShownComparison {
  return (
    isPlain(value) &&
    isString(value['title']) &&
    isString(value['between']) &&
    isList(value['notes'], isString) &&
    isAbsentOr(value['broken'], isString) &&
    isList(value['sections'], isSection) &&
    isAbsentOr(value['drawing'], isDrawn)
  );
}

function isSection(value: unknown): value is ShownSection {
  return (
    isPlain(value) &&
    isString(value['id']) &&
    isString(value['heading']) &&
    isList(value['notes'], isString) &&
    isList(value['columns'], isColumn) &&
    isList(value['rows'], isRow)
  );
}

function isColumn(value: unknown): value is ShownColumn {
  return (
    isPlain(value) &&
    isString(value['head']) &&
    isAbsentOr(value['right'], isFlag) &&
    isAbsentOr(value['prose'], isFlag)
  );
}

function isRow(value: unknown): value is ShownRow {
  if (!isPlain(value) || !isList(value['cells'], isString) || !isList(value['by'], isCount)) return false;
  const { places } = value;
  return isPlain(places) && isAbsentOr(places['before'], isLocation) && isAbsentOr(places['after'], isLocation);
}

function isLocation(value: unknown): value is TextLocation {
  return isPlain(value) && isString(value['uri']) && isRange(value['range']);
}

function isRange(value: unknown): value is TextRange {
  if (!isPlain(value)) return false;
  return [value['start'], value['end']].every(end => isPlain(end) && isCount(end['line']) && isCount(end['character']));
}
