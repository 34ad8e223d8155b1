import type { Finding, Fix, Place } from './findings/finding.ts';
import { placed } from './findings/placed.ts';
import { placeOfUse, usesOf, withoutUse, type Use } from './lowering/uses.ts';
import type { Project } from './lowering/project.ts';
import type { SpecText } from './lowering/names.ts';

/** Why a file could not be read. */
export type ReadProblem = 'missing' | 'forbidden' | 'folder' | 'binary' | 'encoding' | 'too-large' | 'outside';

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
  shipped: SpecText,
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
  const visible = new Map(texts.map(text => [text, [...closure(text, direct), shipped]]));
  visible.set(shipped, [shipped]);
  return { project: { main, texts, visible, shipped }, findings };
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
