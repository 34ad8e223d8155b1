import type { SpecText } from './names.ts';

/** A file with all it uses, and what ships. */
export interface Project {
  readonly main: SpecText;
  /** The main file first, then what it uses, each once. */
  readonly texts: readonly SpecText[];
  /** For each text the texts whose names it may use: itself, what it uses, what ships. */
  readonly visible: ReadonlyMap<SpecText, readonly SpecText[]>;
  readonly shipped: SpecText;
  /** The shipped rulebooks that the texts lead to. */
  readonly rulebooks: readonly SpecText[];
}

/** A text that is none of one's own. */
export function isShipped({ shipped, rulebooks }: Project, text: SpecText): boolean {
  return text === shipped || rulebooks.includes(text);
}

/** The project with other texts in the place of some. */
export function projectWith(project: Project, instead: ReadonlyMap<SpecText, SpecText>): Project {
  const now = (text: SpecText): SpecText => instead.get(text) ?? text;
  return {
    ...project,
    main: now(project.main),
    texts: project.texts.map(now),
    visible: new Map([...project.visible].map(([text, seen]) => [now(text), seen.map(now)]))
  };
}
