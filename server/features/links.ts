import type { DocumentLink } from 'vscode-languageserver';
import { usedPathsIn } from '../../language/editing/used-files.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';

/** The paths of used files lead to them; one that leads out of the folder leads nowhere. */
export const links: Feature = {
  capabilities: { documentLinkProvider: {} },
  register(workspace) {
    workspace.connection.onDocumentLinks(
      aboutNewestText(async ({ textDocument }): Promise<DocumentLink[]> => {
        const seen = await workspace.look(textDocument.uri);
        if (seen === undefined) return [];
        return usedPathsIn(seen.text).flatMap(({ path, place }) => {
          const file = seen.files.resolve(seen.uri, path);
          const isSpec = /\.paving$/i.test(path);
          return file === undefined || !isSpec
            ? []
            : [{ range: rangeOf(place), target: workspace.editorsAddress(file), tooltip: 'Open this file' }];
        });
      })
    );
  }
};
