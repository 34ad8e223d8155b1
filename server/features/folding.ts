import { FoldingRangeKind, type FoldingRange } from 'vscode-languageserver';
import { foldsIn } from '../../language/editing/folding.ts';
import { aboutNewestText, type Feature } from '../feature.ts';

/** What can be folded away. */
export const folding: Feature = {
  capabilities: { foldingRangeProvider: true },
  register(workspace) {
    workspace.connection.onFoldingRanges(
      aboutNewestText(async ({ textDocument }): Promise<FoldingRange[]> => {
        const seen = await workspace.look(textDocument.uri);
        if (seen === undefined) return [];
        return foldsIn(seen.text).map(({ first, last, kind }) => ({
          startLine: first - 1,
          endLine: last - 1,
          ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}),
          ...(kind === 'uses' ? { kind: FoldingRangeKind.Imports } : {})
        }));
      })
    );
  }
};
