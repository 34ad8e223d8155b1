import type { Place, TextChange } from '../findings/finding.ts';
import type { SpecText } from '../lowering/names.ts';
import { placeOfUse, usesOf } from '../lowering/uses.ts';

/** The path of a `use` statement: as written, and its place within the quotes. */
export interface UsedPath {
  readonly path: string;
  readonly place: Place;
}

export function usedPathsIn(text: SpecText): UsedPath[] {
  return usesOf(text).map(use => {
    const place = placeOfUse(text, use);
    const column = place.column + 1;
    return { path: use.path, place: { ...place, column, endColumn: column + use.path.length } };
  });
}

/** The path under a cursor (1-based), its quotes included. */
export function usedPathAt(text: SpecText, line: number, column: number): UsedPath | undefined {
  return usedPathsIn(text).find(
    ({ place }) => place.line === line && place.column - 1 <= column && column <= place.endColumn + 1
  );
}

/** Writes the paths anew when files move; `moved` gives a path as it is to be written, or nothing where it stays. */
export function mendedPaths(text: SpecText, moved: (path: string) => string | undefined): TextChange[] {
  return usedPathsIn(text).flatMap(({ path, place }) => {
    const mended = moved(path);
    return mended === undefined || mended === path || /["\r\n]/.test(mended) ? [] : [{ place, text: mended }];
  });
}
