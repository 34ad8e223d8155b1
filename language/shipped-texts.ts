import { RULEBOOK_TEXTS, rulebookFile, SHIPPED_FILE, SHIPPED_TEXT } from './library/shipped.ts';
import type { SpecText } from './lowering/names.ts';
import type { Parse } from './syntax/parse.ts';

/** What ships, each text parsed when it is first wanted. */
export class ShippedTexts {
  private readonly parse: Parse;
  private things: SpecText | undefined;
  private readonly rulebooks = new Map<string, SpecText>();

  constructor(parse: Parse) {
    this.parse = parse;
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
    const spec = { file: rulebookFile(name), parsed: this.parse(text) };
    this.rulebooks.set(name, spec);
    return spec;
  }

  get allRulebooks(): readonly SpecText[] {
    return [...RULEBOOK_TEXTS.keys()].flatMap(name => this.rulebookOf(name) ?? []);
  }
}
