import {
  CompletionItemKind,
  InsertTextFormat,
  InsertTextMode,
  MarkupKind,
  type CancellationToken,
  type CompletionItem,
  type CompletionList
} from 'vscode-languageserver';
import {
  asksForPaths,
  completionsAt,
  hasToGoOnAt,
  type Completion,
  type CompletionKind
} from '../../language/editing/completion/completion.ts';
import { documentationOf, type Topic } from '../../language/editing/completion/topic.ts';
import { pathFrom } from '../../language/path-from.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';
import type { Seen } from '../languages.ts';
import type { Workspace } from '../workspace.ts';

/** What can be written next, with a line of help. */
export const completion: Feature = {
  // A slash goes on with a path.
  capabilities: { completionProvider: { triggerCharacters: [' ', '"', '/'], resolveProvider: true } },
  register(workspace) {
    workspace.connection.onCompletion(
      aboutNewestText(async ({ textDocument, position, context }, token): Promise<CompletionList> => {
        const document = workspace.documentOf(textDocument.uri);
        const [text, offset] = [document?.getText(), document?.offsetAt(position)];
        const seen = await workspace.look(textDocument.uri);
        if (seen === undefined || offset === undefined || seen.text.parsed.text !== text) return ASK_AGAIN;
        // A space alone offers only what has to follow: behind a finished statement it is just a space.
        const isTyped = context?.triggerCharacter !== undefined;
        if (isTyped && !hasToGoOnAt(seen.text, seen.project, offset)) return NOTHING;
        const paths = asksForPaths(seen.text, offset) ? await pathsAround(workspace, seen, token) : [];
        const offered = completionsAt(seen.text, seen.project, offset, paths);
        const items = offered.map((each, at) => item(each, at, seen.uri, workspace.completionSupport));
        // What is typed from here on the editor holds against the list by itself.
        return { isIncomplete: false, items };
      })
    );
    workspace.connection.onCompletionResolve(async (asked): Promise<CompletionItem> => {
      if (asked.data === undefined) return asked;
      const { uri, about } = asked.data as Data;
      const seen = await workspace.look(uri);
      const value = seen === undefined ? '' : documentationOf(about, seen.text, seen.project);
      return value === '' ? asked : { ...asked, documentation: { kind: MarkupKind.Markdown, value } };
    });
  }
};

/** What an offer that is looked at closely is sent back with: its documentation is made only then. */
interface Data {
  readonly uri: string;
  readonly about: Topic;
}

const NOTHING: CompletionList = { isIncomplete: false, items: [] };

/** The text has moved on before it could be looked at. */
const ASK_AGAIN: CompletionList = { isIncomplete: true, items: [] };

function item(
  completion: Completion,
  at: number,
  uri: string,
  support: Workspace['completionSupport']
): CompletionItem {
  const { label, kind, detail, about, place, filter, text, snippet } = completion;
  const isSnippet = support.snippetSupport === true && snippet !== undefined;
  return {
    label,
    kind: KINDS[kind],
    // Shown on every line of the list, where `detail` is shown of the chosen one alone.
    ...(support.labelDetailsSupport === true ? { labelDetails: { description: detail } } : { detail }),
    ...(about && { data: { uri, about } satisfies Data }),
    sortText: String(at).padStart(5, '0'),
    filterText: filter,
    textEdit: { range: rangeOf(place), newText: isSnippet ? snippet : text },
    insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    insertTextMode: InsertTextMode.adjustIndentation
  };
}

const KINDS: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  job: CompletionItemKind.Snippet,
  statement: CompletionItemKind.Keyword,
  clause: CompletionItemKind.Keyword,
  block: CompletionItemKind.Snippet,
  side: CompletionItemKind.Field,
  choice: CompletionItemKind.EnumMember,
  name: CompletionItemKind.Variable,
  quantity: CompletionItemKind.Value,
  measure: CompletionItemKind.Unit,
  file: CompletionItemKind.File
};

/** The other job specs of the folder that can be used without a circle, by their paths from a file. */
async function pathsAround(workspace: Workspace, seen: Seen, token: CancellationToken): Promise<string[]> {
  const around = await workspace.lookAround(seen.uri, token);
  const own = seen.text.file;
  const usable = around.seen.filter(
    ({ uri, project }) => uri !== seen.uri && !project.texts.some(({ file }) => file === own)
  );
  return usable.map(({ text }) => pathFrom(own, text.file)).sort(nearestFirst);
}

function nearestFirst(left: string, right: string): number {
  return left.split('/').length - right.split('/').length || (left < right ? -1 : 1);
}
