import type { DefinitionLink } from 'vscode-languageserver';
import { nameAmong, nameAt, placeOfDeclaration } from '../../language/editing/names-at.ts';
import { usedPathAt } from '../../language/editing/used-files.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutText, type Feature } from '../feature.ts';
import { locationOf, seenAt, START } from '../locations.ts';

/** From a name to where it is declared, here or in what ships; from the path of `use` to the file. */
export const definition: Feature = {
  capabilities: { definitionProvider: true },
  register(workspace) {
    workspace.connection.onDefinition(
      aboutText(workspace, async (params, token): Promise<DefinitionLink[]> => {
        const at = await seenAt(workspace, params);
        if (at === undefined) return [];
        const { seen, offset } = at;
        const link = (uri: string, range: DefinitionLink['targetRange'], from: DefinitionLink['targetRange']) => [
          { targetUri: uri, targetRange: range, targetSelectionRange: range, originSelectionRange: from }
        ];
        const own = nameAt(seen, offset);
        const isUnknown = own !== undefined && own.declared === undefined;
        const name = isUnknown ? nameAmong((await workspace.lookAround(seen.uri, token)).seen, seen, offset) : own;
        if (name?.declared !== undefined) {
          const { uri, range } = locationOf(workspace, seen.files, placeOfDeclaration(name.declared));
          return link(uri, range, rangeOf(name.place));
        }
        const { line, character } = params.position;
        const used = usedPathAt(seen.text, line + 1, character + 1);
        const file = used && seen.files.resolve(seen.uri, used.path);
        if (used === undefined || file === undefined || (await workspace.look(file)) === undefined) return [];
        return link(workspace.editorsAddress(file), START, rangeOf(used.place));
      })
    );
  }
};
