import { MarkupKind, type Hover } from 'vscode-languageserver';
import { hoverAt, isVariantAt } from '../../language/editing/hover.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutText, type Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';

/** What is told of the word under the pointer: the numbers of its thing, and help on the word. */
export const hover: Feature = {
  capabilities: { hoverProvider: true },
  register(workspace) {
    workspace.connection.onHover(
      aboutText(workspace, async ({ textDocument: { uri }, position }, token): Promise<Hover | undefined> => {
        const result = await workspace.settled(uri, token);
        const seen = await workspace.look(uri);
        const offset = workspace.documentOf(uri)?.offsetAt(position);
        if (seen === undefined || offset === undefined) return undefined;
        const figures = result && (await workspace.figuresOf(result, token));
        const variants = result && isVariantAt(seen, offset) ? await workspace.variantsOf(result, token) : undefined;
        const worked = result && {
          evaluation: result.evaluation,
          file: result.files.show(sameAddress(uri)),
          ...(figures === undefined ? {} : { figures }),
          ...(variants === undefined ? {} : { variants })
        };
        const found = hoverAt(seen, offset, worked);
        return found && { contents: { kind: MarkupKind.Markdown, value: found.markdown }, range: rangeOf(found.place) };
      })
    );
  }
};
