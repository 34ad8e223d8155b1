import type { ChangePlaces } from '../../comparing/contract.ts';

/** A comparison in words, free of any printer: text, Markdown, page and panel lay out the same. */
export interface ComparisonSheet {
  readonly title: string;
  /** What is compared: `quote-1 to the working copy`. */
  readonly between: string;
  /** What a reader has to know before anything else. */
  readonly notes: readonly string[];
  /** None where nothing differs in meaning. */
  readonly sections: readonly SheetSection[];
}

/** Of what stands in neither text. */
export const NOWHERE: ChangePlaces = {};

export const NOTHING_DIFFERS = 'Nothing differs in meaning.';

export interface SheetSection {
  readonly id: SectionId;
  readonly heading: string;
  /** Said below the heading. */
  readonly notes: readonly string[];
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
}

export type SectionId =
  'edits' | 'renamed' | 'numbers' | 'order' | 'tasks' | 'findings' | 'price' | 'days' | 'under-way' | 'sign';

export interface SheetColumn {
  readonly head: string;
  /** Numbers stand flush right. */
  readonly right?: boolean;
  /** Sentences, which may take several lines. */
  readonly prose?: boolean;
}

export interface SheetRow {
  /** One a column, each on one line. */
  readonly cells: readonly string[];
  readonly places: ChangePlaces;
  /** Numbers of the edits behind it, as they are counted in the first section. */
  readonly by: readonly number[];
}
