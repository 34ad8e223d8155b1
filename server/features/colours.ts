import {
  SemanticTokenModifiers,
  SemanticTokensBuilder,
  SemanticTokenTypes,
  type Range,
  type SemanticTokens
} from 'vscode-languageserver';
import { wordKindsIn, type WordKind } from '../../language/editing/word-kinds.ts';
import type { Kind } from '../../language/lowering/names.ts';
import { aboutNewestText, type Feature } from '../feature.ts';
import { linesOf } from '../locations.ts';
import type { Workspace } from '../workspace.ts';

/*
 * The package's `semanticTokenScopes` lead each of these to the colour that the editor's own grammar gives the word before
 * the server answers, so that nothing flashes; a theme can tell them apart further.
 */
const TYPES = [
  SemanticTokenTypes.keyword,
  SemanticTokenTypes.modifier,
  SemanticTokenTypes.variable,
  SemanticTokenTypes.struct,
  SemanticTokenTypes.type,
  SemanticTokenTypes.enum,
  SemanticTokenTypes.class,
  SemanticTokenTypes.enumMember,
  SemanticTokenTypes.number,
  SemanticTokenTypes.operator,
  SemanticTokenTypes.string,
  SemanticTokenTypes.comment
] as const;
type Type = (typeof TYPES)[number];

/** A measure is a number's `static` part: there is no type for it. */
const MODIFIERS = [
  SemanticTokenModifiers.declaration,
  SemanticTokenModifiers.defaultLibrary,
  SemanticTokenModifiers.static
] as const;
type Modifier = (typeof MODIFIERS)[number];

/** Colours by what each word means. */
export const colours: Feature = {
  capabilities: {
    semanticTokensProvider: {
      legend: { tokenTypes: [...TYPES], tokenModifiers: [...MODIFIERS] },
      full: true,
      range: true
    }
  },
  register(workspace) {
    const { semanticTokens } = workspace.connection.languages;
    semanticTokens.on(aboutNewestText(({ textDocument }) => coloured(workspace, textDocument.uri)));
    semanticTokens.onRange(aboutNewestText(({ textDocument, range }) => coloured(workspace, textDocument.uri, range)));
  }
};

async function coloured(workspace: Workspace, uri: string, range?: Range): Promise<SemanticTokens> {
  const seen = await workspace.look(uri);
  const builder = new SemanticTokensBuilder();
  const words = seen === undefined ? [] : wordKindsIn(seen, range && linesOf(seen.text.parsed.text, range));
  for (const word of words) {
    const { line, column, endColumn } = word.place;
    const { type, modifiers } = colourOf(word);
    const bits = modifiers.reduce((all, modifier) => all | (1 << MODIFIERS.indexOf(modifier)), 0);
    builder.push(line - 1, column - 1, endColumn - column, TYPES.indexOf(type), bits);
  }
  return builder.build();
}

export function colourOf(word: WordKind): { readonly type: Type; readonly modifiers: readonly Modifier[] } {
  const { kind, declared } = word;
  return {
    type: declared === undefined ? TYPE_OF_WORD[kind] : TYPE_OF_THING[declared.kind],
    modifiers: modifiersOf(word)
  };
}

function modifiersOf({ kind, isDeclaration, isShipped }: WordKind): Modifier[] {
  return [
    ...(isDeclaration ? [SemanticTokenModifiers.declaration as const] : []),
    ...(isShipped ? [SemanticTokenModifiers.defaultLibrary as const] : []),
    ...(kind === 'measure' ? [SemanticTokenModifiers.static as const] : [])
  ];
}

const TYPE_OF_WORD: Readonly<Record<WordKind['kind'], Type>> = {
  statement: SemanticTokenTypes.keyword,
  clause: SemanticTokenTypes.modifier,
  name: SemanticTokenTypes.variable,
  choice: SemanticTokenTypes.enumMember,
  number: SemanticTokenTypes.number,
  measure: SemanticTokenTypes.number,
  sign: SemanticTokenTypes.operator,
  text: SemanticTokenTypes.string,
  comment: SemanticTokenTypes.comment
};

const TYPE_OF_THING: Readonly<Record<Kind, Type>> = {
  let: SemanticTokenTypes.variable,
  point: SemanticTokenTypes.variable,
  line: SemanticTokenTypes.variable,
  section: SemanticTokenTypes.variable,
  benchmark: SemanticTokenTypes.variable,
  unit: SemanticTokenTypes.struct,
  material: SemanticTokenTypes.type,
  'soil-kind': SemanticTokenTypes.enum,
  'side-kind': SemanticTokenTypes.enum,
  bond: SemanticTokenTypes.enum,
  existing: SemanticTokenTypes.class,
  area: SemanticTokenTypes.class,
  'kept-out': SemanticTokenTypes.class,
  drain: SemanticTokenTypes.class,
  pipe: SemanticTokenTypes.class,
  gate: SemanticTokenTypes.class,
  route: SemanticTokenTypes.class,
  supplier: SemanticTokenTypes.class,
  source: SemanticTokenTypes.enum,
  rulebook: SemanticTokenTypes.class,
  rule: SemanticTokenTypes.class,
  rate: SemanticTokenTypes.enum,
  variant: SemanticTokenTypes.class
};
