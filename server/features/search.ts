import type { SymbolInformation } from 'vscode-languageserver';
import { thingsNamed } from '../../language/editing/search.ts';
import type { Feature } from '../feature.ts';
import { locationOf } from '../locations.ts';
import { pictureOf } from './contents.ts';

/** Things by their name, in all open folders. */
export const search: Feature = {
  capabilities: { workspaceSymbolProvider: true },
  register(workspace) {
    workspace.connection.onWorkspaceSymbol(async ({ query }, token): Promise<SymbolInformation[]> => {
      const found: SymbolInformation[] = [];
      for (const folder of workspace.openFolders) {
        const { seen, all } = await workspace.lookIn(folder, token);
        if (!all) workspace.tellTooMany(folder);
        for (const { text, files } of seen)
          for (const { entry, within } of thingsNamed(text, query))
            found.push({
              name: entry.name,
              kind: pictureOf(entry),
              location: locationOf(workspace, files, entry.namePlace),
              containerName: within ?? text.file
            });
      }
      return found;
    });
  }
};
