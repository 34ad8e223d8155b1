import type { DocumentOnTypeFormattingParams, Range, TextEdit } from 'vscode-languageserver';
import { indentEdits } from '../../language/format/indent.ts';
import { formatEdits, formatEditsIn } from '../../language/format/parts.ts';
import type { Parse, ParsedText } from '../../language/syntax/parse.ts';
import { LineStarts } from '../../language/syntax/line-starts.ts';
import type { TextEdit as Edit } from '../../language/syntax/text-edit.ts';
import { aboutText, type Feature } from '../feature.ts';

/**
 * The canonical form for the whole text, for a selection, and the indent while typing. It has two spaces to an indent and
 * no tabs, so that a file looks alike everywhere: what the editor is set to is not asked.
 */
export const format: Feature = {
  capabilities: {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] }
  },
  register(workspace) {
    const answer = <P extends { textDocument: { uri: string } }>(
      edits: (parsed: ParsedText, params: P, parse: Parse) => Edit[]
    ): ((params: P, token: Parameters<ReturnType<typeof aboutText>>[1]) => Promise<TextEdit[]>) =>
      aboutText(workspace, async params => {
        const seen = await workspace.look(params.textDocument.uri);
        if (seen === undefined) return [];
        const { parsed } = seen.text;
        return textEdits(parsed.text, edits(parsed, params, seen.parse));
      });
    const { connection } = workspace;
    connection.onDocumentFormatting(answer((parsed, _, parse) => formatEdits(parsed, parse)));
    connection.onDocumentRangeFormatting(answer((parsed, { range }, parse) => inRange(parsed, range, parse)));
    connection.onDocumentOnTypeFormatting(answer((parsed, params) => onType(parsed, params)));
  }
};

/** The lines of a selection; one that ends before the first word of a line does not hold that line. */
function inRange(parsed: ParsedText, { start, end }: Range, parse: Parse): Edit[] {
  const lines = new LineStarts(parsed.text);
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return formatEditsIn(parsed, lines.offsetOf(start.line, 0), lines.endOf(last), parse);
}

function onType(parsed: ParsedText, { position, ch }: DocumentOnTypeFormattingParams): Edit[] {
  const at = new LineStarts(parsed.text).offsetOf(position.line, position.character);
  // A brace within a line moves nothing.
  const before = parsed.text.slice(parsed.text.lastIndexOf('\n', at - 1) + 1, at);
  return ch === '}' && before.trim() !== '}' ? [] : indentEdits(parsed, at);
}

function textEdits(text: string, edits: readonly Edit[]): TextEdit[] {
  const lines = new LineStarts(text);
  const position = (offset: number) => ({ line: lines.lineOf(offset), character: lines.columnOf(offset) });
  return edits.map(({ start, end, text: newText }) => ({
    range: { start: position(start), end: position(end) },
    newText
  }));
}
