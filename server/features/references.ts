import { isShipped } from '../../language/lowering/project.ts';
import type { Location } from 'vscode-languageserver';
import { nameAmong, placeOfDeclaration } from '../../language/editing/names-at.ts';
import { placesInAll, placesInExample } from '../../language/editing/references.ts';
import { aboutText, type Feature } from '../feature.ts';
import { locationOf, seenAt } from '../locations.ts';

/** Every place that names a thing, in all job specs of the folder, open or not. */
export const references: Feature = {
  capabilities: { referencesProvider: true },
  register(workspace) {
    workspace.connection.onReferences(
      aboutText(workspace, async (params, token): Promise<Location[]> => {
        const around = await workspace.lookAround(params.textDocument.uri, token);
        const at = await seenAt(workspace, params);
        const declared = at && nameAmong(around.seen, at.seen, at.offset)?.declared;
        if (declared === undefined) return [];
        const { files } = at!.seen;
        if (!around.all) workspace.tellTooMany(files.folder);
        const withDeclaration = params.context.includeDeclaration;
        const all = placesInExample(at!.seen, at!.offset, declared) ?? placesInAll(around.seen, declared);
        const places = all.filter(place => withDeclaration || !place.isDeclaration);
        const isOfLibrary = isShipped(at!.seen.project, declared.text);
        const shipped = isOfLibrary && withDeclaration ? [placeOfDeclaration(declared)] : [];
        return [...places.map(({ place }) => place), ...shipped].map(place => locationOf(workspace, files, place));
      })
    );
  }
};
