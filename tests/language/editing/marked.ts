import { Paving, type Look } from '../../../language/paving.ts';
import { withCursor } from '../../cursor.ts';
import { inMemory } from '../in-memory.ts';

export interface Marked {
  readonly look: Look;
  readonly looks: readonly Look[];
  readonly offset: number;
  readonly paving: Paving;
}

/** Files of one folder by their names, one of them with a cursor in it. */
export async function marked(files: Readonly<Record<string, string>>): Promise<Marked> {
  const [main, { text: marked, start }] = Object.entries(files)
    .filter(([, text]) => text.includes('‸'))
    .map(([file, text]) => [file, withCursor(text)] as const)[0]!;
  const texts = { ...files, [main]: marked };
  const paving = new Paving(inMemory(texts));
  for (const file of Object.keys(texts)) await paving.load(file);
  const looks = Object.keys(texts).map(file => paving.look(file)!);
  const look = looks.find(({ text }) => text.file === main)!;
  return { paving, looks, look, offset: start };
}

interface Drawable {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

/** Places as a person would point at them: `file: the line with «the words» marked`. */
export function drawn(looks: readonly Look[], places: readonly Drawable[]): string[] {
  return places.map(({ file, line, column, endColumn }) => {
    const text = looks.flatMap(({ project }) => project.texts).find(each => each.file === file)!;
    const words = text.parsed.text.split('\n')[line - 1]!;
    const [before, at, after] = [
      words.slice(0, column - 1),
      words.slice(column - 1, endColumn - 1),
      words.slice(endColumn - 1)
    ];
    return `${file}: ${before}«${at}»${after}`.replaceAll(/ +/g, ' ');
  });
}
