// Elements of the page: DOM calls alone, so that words stay words.
import { element } from '../element.ts';

const SVG = 'http://www.w3.org/2000/svg';

type Attributes = Readonly<Record<string, string | number | undefined>>;

export function html<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  attributes: Readonly<Record<string, string>>,
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[Name] {
  return element(name, attributes, ...inside) as HTMLElementTagNameMap[Name];
}

/** Attributes that are undefined are left out. */
export function svg<Name extends keyof SVGElementTagNameMap>(
  name: Name,
  attributes: Attributes,
  ...inside: readonly (Node | string)[]
): SVGElementTagNameMap[Name] {
  const built = document.createElementNS(SVG, name);
  setAll(built, attributes);
  built.append(...inside);
  return built;
}

export function setAll(built: Element, attributes: Attributes): void {
  for (const [attribute, value] of Object.entries(attributes)) {
    if (value === undefined) built.removeAttribute(attribute);
    else built.setAttribute(attribute, String(value));
  }
}

export function button(
  words: string,
  attributes: Readonly<Record<string, string>>,
  press: () => void
): HTMLButtonElement {
  const built = html('button', { type: 'button', ...attributes }, words);
  built.addEventListener('click', press);
  return built;
}
