import { DocumentHighlightKind, type DocumentHighlight } from 'vscode-languageserver';
import { highlightsAt } from '../../language/editing/highlights.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutText, type Feature } from '../feature.ts';
import { seenAt } from '../locations.ts';

/** The name under the cursor wherever it stands in the text: declared (written) or used (read). */
export const highlights: Feature = {
  capabilities: { documentHighlightProvider: true },
  register(workspace) {
    workspace.connection.onDocumentHighlight(
      aboutText(workspace, async (params): Promise<DocumentHighlight[]> => {
        const at = await seenAt(workspace, params);
        if (at === undefined) return [];
        return highlightsAt(at.seen, at.offset).map(({ place, isDeclaration }) => ({
          range: rangeOf(place),
          kind: isDeclaration ? DocumentHighlightKind.Write : DocumentHighlightKind.Read
        }));
      })
    );
  }
};
