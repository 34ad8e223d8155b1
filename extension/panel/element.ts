/** Words are words: nothing is read as markup. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...inside: readonly (Node | string)[]
): Element {
  const built = document.createElement(name);
  for (const [attribute, value] of Object.entries(attributes)) if (value !== '') built.setAttribute(attribute, value);
  built.append(...inside);
  return built;
}
