// As much of a page as the panel builds in: elements that print as markup, so that what is built can be read.
const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, sign => SIGNS[sign]!);

export class BuiltElement {
  readonly name: string;
  readonly space: string | undefined;
  readonly attributes = new Map<string, string>();
  readonly inside: (BuiltElement | string)[] = [];
  private readonly listeners = new Map<string, () => void>();
  private readonly page: BuiltPage;

  constructor(page: BuiltPage, name: string, space?: string) {
    this.page = page;
    this.name = name;
    this.space = space;
  }

  setAttribute(name: string, value: string): void {
    this.attributes.set(name, value);
  }

  append(...parts: readonly (BuiltElement | string)[]): void {
    this.inside.push(...parts);
  }

  addEventListener(event: string, listener: () => void): void {
    this.listeners.set(event, listener);
  }

  click(): void {
    this.listeners.get('click')?.();
  }

  focus(): void {
    this.page.focused = this;
  }

  /** All below it, itself first. */
  all(): BuiltElement[] {
    return [this, ...this.inside.flatMap(part => (typeof part === 'string' ? [] : part.all()))];
  }

  find(name: string): BuiltElement[] {
    return this.all().filter(element => element.name === name);
  }

  get text(): string {
    return this.inside.map(part => (typeof part === 'string' ? part : part.text)).join('');
  }

  get markup(): string {
    const attributes = [...this.attributes].map(([name, value]) => ` ${name}="${escaped(value)}"`).join('');
    const inside = this.inside.map(part => (typeof part === 'string' ? escaped(part) : part.markup)).join('');
    return inside === '' ? `<${this.name}${attributes}/>` : `<${this.name}${attributes}>${inside}</${this.name}>`;
  }
}

export class BuiltPage {
  focused: BuiltElement | undefined;
  private readonly built: BuiltElement[] = [];

  createElement(name: string): BuiltElement {
    return this.createElementNS(undefined, name);
  }

  createElementNS(space: string | undefined, name: string): BuiltElement {
    const element = new BuiltElement(this, name, space);
    this.built.push(element);
    return element;
  }

  getElementById(id: string): BuiltElement | null {
    return this.built.find(({ attributes }) => attributes.get('id') === id) ?? null;
  }
}
