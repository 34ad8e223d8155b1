import { GrammarUtils, type AstNode } from 'langium';
import type { TextChange } from '../findings/finding.ts';
import { written, type Gap, type Gaps } from '../findings/gap.ts';
import type { Key } from '../job/job.ts';
import { takenOut, type TextEdit } from '../syntax/text-edit.ts';
import type { Property } from './context.ts';
import { gapIn, type BlockForm, type GapInText } from './gap.ts';
import type { SpecText } from './names.ts';
import { Placer } from './placer.ts';

/** The changes that fixes make, from the nodes of syntax trees. */
export class TextChanges {
  /** Where something that is not said could be written. */
  /** Most are never asked for: each is looked for when it is. */
  private readonly noted = new Map<Key, () => Gap | undefined>();
  readonly gaps: Gaps = { get: key => this.noted.get(key)?.() };
  private readonly placers = new Map<SpecText, Placer>();

  placerOf(text: SpecText): Placer {
    const placer = this.placers.get(text) ?? Placer.of(text);
    this.placers.set(text, placer);
    return placer;
  }

  change(text: SpecText, edit: TextEdit): TextChange {
    return this.placerOf(text).change(edit);
  }

  /** Takes out what a node or one of its properties says, with its line or its comma. */
  takenOut(text: SpecText, node: AstNode, property?: Property): TextChange {
    const { start, end } = spanOf(node, property);
    return this.change(text, takenOut(text.parsed.text, start, end));
  }

  over(text: SpecText, node: AstNode, words: string, property?: Property): TextChange {
    return this.change(text, { ...spanOf(node, property), text: words });
  }

  behind(text: SpecText, node: AstNode, words: string, property?: Property): TextChange {
    const { end } = spanOf(node, property);
    return this.change(text, { start: end, end, text: words });
  }

  /** Notes a gap in the block of a sound node, behind one of its statements or at its start. */
  gap(
    key: Key,
    text: SpecText,
    node: AstNode & { readonly items: readonly AstNode[] },
    behind: AstNode | undefined,
    form: BlockForm
  ): void {
    this.noted.set(key, () => {
      const gap = gapIn(text, node, behind, form);
      return gap && this.placed(text, gap);
    });
  }

  gapAt(key: Key, text: SpecText, gap: GapInText): void {
    this.noted.set(key, () => this.placed(text, gap));
  }

  private placed(text: SpecText, { start, end, ...around }: GapInText): Gap {
    return { place: this.placerOf(text).place(start, end), ...around };
  }

  /** A gap within a statement that is itself not said: `edges { … }`. */
  wrapGap(key: Key, inner: Key, [open, close]: readonly [string, string]): void {
    const outer = this.noted.get(key);
    if (outer === undefined) return;
    this.noted.set(inner, () => {
      const gap = outer();
      if (gap === undefined) return undefined;
      const space = open.indexOf(' ');
      const head = open.slice(0, space).padEnd(gap.column - 1);
      const around = { before: gap.before + head + open.slice(space), after: close + gap.after };
      return { ...gap, ...around, column: 0 };
    });
  }

  /** Statements written into a gap; nothing where there is no such gap. */
  said(key: Key, statements: readonly string[]): TextChange[] {
    const gap = this.gaps.get(key);
    return gap === undefined ? [] : [written(gap, statements)];
  }
}

/** The offsets of a node, or of a property of it. */
export function spanOf(node: AstNode, property?: Property): { readonly start: number; readonly end: number } {
  const [name, first, last] = typeof property === 'string' ? [property, 0] : (property ?? []);
  const found = (index: number) =>
    name === undefined ? undefined : GrammarUtils.findNodeForProperty(node.$cstNode, name, index);
  const from = found(first ?? 0) ?? node.$cstNode;
  const to = last === undefined ? from : (found(last) ?? from);
  return { start: from?.offset ?? 0, end: to?.end ?? 0 };
}
