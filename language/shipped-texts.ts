import { RULEBOOK_TEXTS, rulebookFile, SHIPPED_FILE, SHIPPED_TEXT } from './library/shipped.ts';
import type { SpecText } from './lowering/names.ts';
import type { Parse } from './syntax/parse.ts';

/** What ships, each text parsed when it is first wanted; the examples of its rules only where they are to be shown. */
export class ShippedTexts {
  private readonly parse: Parse;
  private readonly withExamples: boolean;
  private things: SpecText | undefined;
  private readonly rulebooks = new Map<string, SpecText>();

  constructor(parse: Parse, withExamples: boolean) {
    this.parse = parse;
    this.withExamples = withExamples;
  }

  /** What every job can name. */
  get shipped(): SpecText {
    this.things ??= { file: SHIPPED_FILE, parsed: this.parse(SHIPPED_TEXT) };
    return this.things;
  }

  /** A rulebook by name; undefined where none ships that is called so. */
  rulebookOf(name: string): SpecText | undefined {
    const text = RULEBOOK_TEXTS.get(name);
    if (text === undefined || this.rulebooks.has(name)) return this.rulebooks.get(name);
    const spec = { file: rulebookFile(name), parsed: this.parse(this.withExamples ? text : withoutExamples(text)) };
    this.rulebooks.set(name, spec);
    return spec;
  }

  get allRulebooks(): readonly SpecText[] {
    return [...RULEBOOK_TEXTS.keys()].flatMap(name => this.rulebookOf(name) ?? []);
  }
}

/** With empty lines in their place, so that every rule stays where it is: they are half of a rulebook, and judge nothing. */
function withoutExamples(rulebook: string): string {
  return rulebook.replace(/^ {2}(?:wrong|right) \{\n[^]*?\n {2}\}$/gm, example => example.replace(/[^\n]/g, ''));
}
