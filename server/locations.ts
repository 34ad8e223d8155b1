// Between places in texts and what the protocol calls positions, ranges and locations.
import type { Location, Position, Range, TextDocumentIdentifier } from 'vscode-languageserver';
import type { Place } from '../language/findings/finding.ts';
import { LineStarts } from '../language/syntax/line-starts.ts';
import type { Span } from '../language/syntax/text-edit.ts';
import { locationIn } from './diagnostics.ts';
import type { FolderFiles } from './folder-files.ts';
import type { Seen } from './languages.ts';
import type { Workspace } from './workspace.ts';

interface Asked {
  readonly textDocument: TextDocumentIdentifier;
  readonly position: Position;
}

/** A text as it stands now, and the offset that a request asks about; undefined for a text that is not open. */
export async function seenAt(
  workspace: Workspace,
  { textDocument, position }: Asked
): Promise<{ readonly seen: Seen; readonly offset: number } | undefined> {
  const seen = await workspace.look(textDocument.uri);
  const document = workspace.documentOf(textDocument.uri);
  return seen && document && { seen, offset: document.offsetAt(position) };
}

/** Where the editor finds a place: in a file of the folder, or in what ships. */
export function locationOf(workspace: Workspace, files: FolderFiles, place: Place): Location {
  const location = locationIn(files, place);
  return { ...location, uri: workspace.editorsAddress(location.uri) };
}

/** The offsets of the lines that a range touches; it may end past the text. */
export function linesOf(text: string, { start, end }: Range): Span {
  const lines = new LineStarts(text);
  return { start: start.line === 0 ? 0 : lines.endOf(start.line - 1) + 1, end: lines.endOf(end.line) };
}

export const START: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
