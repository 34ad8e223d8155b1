import { SymbolKind, type DocumentSymbol } from 'vscode-languageserver';
import { contentsOf, type Entry } from '../../language/editing/contents.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';

/** What a text holds, one within the other, for the outline and the path above the text. */
export const contents: Feature = {
  capabilities: { documentSymbolProvider: true },
  register(workspace) {
    workspace.connection.onDocumentSymbol(
      aboutNewestText(async ({ textDocument }): Promise<DocumentSymbol[]> => {
        const seen = await workspace.look(textDocument.uri);
        return seen === undefined ? [] : contentsOf(seen.text).map(shown);
      })
    );
  }
};

function shown(entry: Entry): DocumentSymbol {
  const { name, detail, place, namePlace, inside } = entry;
  return {
    name,
    detail,
    kind: pictureOf(entry),
    range: rangeOf(place),
    selectionRange: rangeOf(namePlace),
    children: inside.map(shown)
  };
}

/** The editor has pictures for the things of programs alone; these are told apart at a glance. */
export function pictureOf({ word }: Entry): SymbolKind {
  return PICTURES[word] ?? SymbolKind.Property;
}

const PICTURES: Readonly<Record<string, SymbolKind>> = {
  job: SymbolKind.Package,
  use: SymbolKind.File,
  site: SymbolKind.Namespace,
  benchmark: SymbolKind.Key,
  let: SymbolKind.Constant,
  point: SymbolKind.Variable,
  unit: SymbolKind.Struct,
  material: SymbolKind.Array,
  'soil-kind': SymbolKind.Enum,
  'side-kind': SymbolKind.Enum,
  bond: SymbolKind.Enum,
  existing: SymbolKind.Object,
  area: SymbolKind.Class,
  box: SymbolKind.Object,
  pit: SymbolKind.Object,
  line: SymbolKind.Variable,
  section: SymbolKind.Variable,
  heights: SymbolKind.Namespace,
  levels: SymbolKind.Field,
  drain: SymbolKind.Object,
  pipe: SymbolKind.Object,
  gate: SymbolKind.Object,
  door: SymbolKind.Object,
  route: SymbolKind.Object,
  log: SymbolKind.Namespace,
  entry: SymbolKind.Event,
  side: SymbolKind.Field
};
