import * as ast from '../syntax/generated/ast.ts';
import { Context } from './context.ts';
import { keyOf } from './keys.ts';
import type { Declared, SpecText } from './names.ts';
import { saidOnce } from './said-once.ts';

export const SOURCE_KINDS = [
  'standard',
  'code',
  'association-guidance',
  'handbook',
  'common-practice',
  'memory'
] as const;

type SourceKind = (typeof SOURCE_KINDS)[number];

/** How the place that is cited is known: read in the source unless said. */
export const HOW_KNOWN = ['from-memory', 'as-quoted'] as const;

export interface Source {
  readonly kind: SourceKind;
  readonly title?: string;
  readonly edition?: string;
}

/** A source as cited by a rule. */
export interface Cited {
  /** In a sentence, without its full stop. */
  readonly words: string;
  /** Someone read it, and it is more than practice. */
  readonly isGround: boolean;
}

const KIND_WORDS: Readonly<Record<SourceKind, string>> = {
  standard: 'Standard: ',
  code: 'Code: ',
  'association-guidance': 'Association guidance: ',
  handbook: 'Handbook: ',
  'common-practice': 'Common practice, no source',
  memory: 'From memory, no source was read'
};

/** Reads what a `source` declares. */
export function readSource(context: Context, { text, node, ...declared }: Declared): Source | undefined {
  const source = node as ast.Source;
  const key = keyOf({ text, node, ...declared });
  const said = saidOnce(context, text, key, source.items, item =>
    item.$type === 'SourceText' ? (item.what ?? '') : item.$type
  );
  const kindItem = said.get('SourceKind') as ast.SourceKind | undefined;
  if (kindItem === undefined)
    return context.incomplete(
      text,
      key,
      source,
      `The source ${declared.name} does not say what it is. Write \`kind\` and one of: ${SOURCE_KINDS.join(', ')}.`
    );
  const kind = context.word(text, key, kindItem, 'kind', kindItem.kind, SOURCE_KINDS);
  const [title, edition] = ['title', 'edition'].map(what => (said.get(what) as ast.SourceText | undefined)?.text);
  if (kind === undefined) return undefined;
  if (title === undefined && kind !== 'common-practice' && kind !== 'memory')
    return context.incomplete(text, key, source, `The source ${declared.name} has no title. Write \`title "…"\`.`);
  return { kind, ...(title === undefined ? {} : { title }), ...(edition === undefined ? {} : { edition }) };
}

/** A source as a rule cites it: its kind, title, edition, the place in it, and how that is known. */
export function cited(source: Source, place: string | undefined, how: (typeof HOW_KNOWN)[number] | undefined): Cited {
  const { kind, title, edition } = source;
  const named = [title, edition, place].filter(part => part !== undefined).join(', ');
  if (kind === 'common-practice' || kind === 'memory')
    return { words: named === '' ? KIND_WORDS[kind] : `${KIND_WORDS[kind]} (${named})`, isGround: false };
  if (how === 'from-memory') return { words: `From memory, not read again: ${named}`, isGround: false };
  if (how === 'as-quoted') return { words: `${KIND_WORDS[kind]}${named}, as quoted in other texts`, isGround: true };
  return { words: KIND_WORDS[kind] + named, isGround: true };
}

/** The source that a name leads to. */
export function findSource(context: Context, text: SpecText, key: string, node: ast.RuleCites): Source | undefined {
  const found = context.find(text, key, node, 'source', node.source?.$refText, ['source']);
  return found && readSource(context, found);
}
