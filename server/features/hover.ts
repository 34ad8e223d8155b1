import { MarkupKind, type Hover } from 'vscode-languageserver';
import { hoverAt } from '../../language/views/hover.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutText, type Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';

/** What the numbers say of the thing under the pointer. */
export const hover: Feature = {
  capabilities: { hoverProvider: true },
  register(workspace) {
    workspace.connection.onHover(
      aboutText(workspace, async ({ textDocument, position }, token): Promise<Hover | undefined> => {
        const result = await workspace.settled(textDocument.uri, token);
        if (result === undefined) return undefined;
        const file = result.files.show(sameAddress(textDocument.uri));
        const found = hoverAt(result.evaluation, file, position.line + 1, position.character + 1);
        return found && { contents: { kind: MarkupKind.Markdown, value: found.markdown }, range: rangeOf(found.place) };
      })
    );
  }
};
