import type { SelectionRange } from 'vscode-languageserver';
import { selectionsAt } from '../../language/editing/selection.ts';
import { aboutText, type Feature } from '../feature.ts';

/** What a selection grows through: from the word to the file. */
export const selection: Feature = {
  capabilities: { selectionRangeProvider: true },
  register(workspace) {
    workspace.connection.onSelectionRanges(
      aboutText(workspace, async ({ textDocument, positions }): Promise<SelectionRange[]> => {
        const seen = await workspace.look(textDocument.uri);
        const document = workspace.documentOf(textDocument.uri);
        if (seen === undefined || document === undefined) return [];
        return positions.map(position => {
          const spans = selectionsAt(seen.text, document.offsetAt(position)).reverse();
          const ranges = spans.map(({ start, end }) => ({
            start: document.positionAt(start),
            end: document.positionAt(end)
          }));
          return ranges.reduce<SelectionRange | undefined>(
            (parent, range) => (parent === undefined ? { range } : { range, parent }),
            undefined
          )!;
        });
      })
    );
  }
};
