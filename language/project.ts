import type { Finding, Fix, Place } from './findings/finding.ts';
import { placed } from './findings/placed.ts';
import { placeOfUse, usesOf, withoutUse, type Use } from './lowering/uses.ts';
import type { Project } from './lowering/project.ts';
import { rulebooksNamed } from './lowering/rulebooks-named.ts';
import type { SpecText } from './lowering/names.ts';

/** Why a file could not be read; `unsaved`: its path counts from a file that lies nowhere yet. */
export type ReadProblem =
  'missing' | 'forbidden' | 'folder' | 'binary' | 'encoding' | 'too-large' | 'outside' | 'unsaved';

export type ReadResult = { readonly text: string } | { readonly problem: ReadProblem };

/** Reading of files, passed in: the language itself knows no file system. */
export interface SpecFiles {
  /** The file that `path`, written in `from`, leads to; undefined when it leads out of the folder. */
  resolve(from: string, path: string): string | undefined;
  read(file: string): Promise<ReadResult>;
  /** As findings and views show the file. */
  show(file: string): string;
}

/** More files than any job is parted into; a guard against a folder that uses itself up. */
export const MOST_FILES = 200;

export interface Gathered {
  readonly project: Project;
  readonly findings: readonly Finding[];
}

/** Gathers a file with all it uses out of texts already read; problems of `use` are findings at their place. */
export function gather(
  main: SpecText,
  { shipped, rulebookOf, all }: Shipped,
  find: (from: SpecText, use: Use) => SpecText | UseProblem
): Gathered {
  const texts: SpecText[] = [];
  const findings: Finding[] = [];
  const direct = new Map<SpecText, SpecText[]>();
  const open: SpecText[] = [];
  const visit = (text: SpecText): void => {
    texts.push(text);
    open.push(text);
    const used: SpecText[] = [];
    direct.set(text, used);
    for (const use of usesOf(text)) {
      const found = find(text, use);
      if ('id' in found) findings.push(useFinding(text, use, found));
      else if (used.includes(found))
        findings.push(
          useFinding(text, use, {
            id: 'said-twice',
            message: `The file ${use.path} is used twice. Take one out.`,
            fixes: [{ title: 'Take it out', safe: true, edits: [withoutUse(text, use)] }]
          })
        );
      else if (open.includes(found)) {
        const message =
          found === text
            ? 'This file uses itself.'
            : `This file is used by ${found.file}, which is used here: a circle.`;
        const fixes = [{ title: 'Take it out', safe: false, edits: [withoutUse(text, use)] }];
        findings.push(useFinding(text, use, { id: 'use-in-circle', message, fixes }));
      } else {
        used.push(found);
        if (direct.has(found)) continue;
        if (texts.length >= MOST_FILES)
          findings.push(
            useFinding(text, use, { id: 'use-too-many', message: `More than ${MOST_FILES} files are used.` })
          );
        else visit(found);
      }
    }
    open.pop();
  };
  visit(main);
  const rulebooks = all ?? rulebooksOf(texts, rulebookOf);
  const visible = new Map(texts.map(text => [text, [...closure(text, direct), ...rulebooks, shipped]]));
  for (const book of rulebooks) visible.set(book, [book, ...rulebooks.filter(other => other !== book), shipped]);
  visible.set(shipped, [shipped]);
  return { project: { main, texts, visible, shipped, rulebooks }, findings };
}

/** What ships: what every job can name, and the rulebooks by name; `all` of them where a person may name any. */
export interface Shipped {
  readonly shipped: SpecText;
  readonly rulebookOf: (name: string) => SpecText | undefined;
  readonly all?: readonly SpecText[];
}

/** The shipped rulebooks that texts lead to, by way of others too. */
function rulebooksOf(texts: readonly SpecText[], rulebookOf: Shipped['rulebookOf']): SpecText[] {
  const found = new Set<SpecText>();
  const follow = (text: SpecText): void => {
    for (const book of rulebooksNamed(text).flatMap(name => rulebookOf(name) ?? [])) {
      if (found.has(book)) continue;
      found.add(book);
      follow(book);
    }
  };
  texts.forEach(follow);
  return [...found];
}

export interface UseProblem {
  readonly id: string;
  readonly message: string;
  readonly fixes?: readonly Fix[];
  /** A file that may be meant, by its path from here. */
  readonly near?: string;
}

function useFinding(text: SpecText, use: Use, problem: UseProblem): Finding {
  const target = `use:${use.path}`;
  const place = placeOfUse(text, use);
  const { id, message, near, fixes = [] } = problem;
  const where = { places: new Map([[target, place]]), gaps: new Map() };
  const meant = near === undefined ? [] : [writing(place, `"${near}"`)];
  return { ...placed({ id, message, target }, where, text.file), fixes: [...meant, ...fixes] };
}

function writing(place: Place, text: string): Fix {
  return { title: `Write \`${text}\``, safe: false, edits: [{ place, text }] };
}

function closure(text: SpecText, direct: ReadonlyMap<SpecText, readonly SpecText[]>): Set<SpecText> {
  const seen = new Set<SpecText>();
  const follow = (at: SpecText): void => {
    if (seen.has(at)) return;
    seen.add(at);
    for (const used of direct.get(at) ?? []) follow(used);
  };
  follow(text);
  return seen;
}
