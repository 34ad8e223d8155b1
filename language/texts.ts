import type { SpecText } from './lowering/names.ts';
import { usesOf } from './lowering/uses.ts';
import { MOST_FILES, type ReadProblem, type SpecFiles } from './project.ts';
import type { Parse } from './syntax/parse.ts';

type Stored = ReadText | { readonly problem: ReadProblem };

interface ReadText {
  readonly text: string;
  spec?: SpecText;
  /** The files that it used when it was last looked into; the text may have been typed in since. */
  used: readonly string[];
}

/** The texts at hand, by file. A text is parsed when it is first looked into, so that fast typing costs nothing. */
export class Texts {
  private readonly files: SpecFiles;
  private readonly parse: Parse;
  private readonly stored = new Map<string, Stored>();
  /** How often a file's text was set or dropped: what was read from disk meanwhile is old. */
  private readonly changes = new Map<string, number>();

  /** How often a text was parsed. */
  parses = 0;

  constructor(files: SpecFiles, parse: Parse) {
    this.files = files;
    this.parse = parse;
  }

  set(file: string, text: string): void {
    const known = this.stored.get(file);
    if (known !== undefined && 'text' in known && known.text === text) return;
    this.changed(file);
    this.stored.set(file, { text, used: known !== undefined && 'text' in known ? known.used : [] });
  }

  drop(file: string): void {
    this.changed(file);
    this.stored.delete(file);
  }

  /** Lets go of files that none of `mains` leads to: of a path typed letter by letter, or read to look for a name. */
  dropUnreached(mains: readonly string[]): void {
    const reached = new Set(mains.flatMap(main => [...this.lastReachedFrom(main)]));
    for (const file of this.stored.keys()) if (!reached.has(file)) this.drop(file);
    for (const file of this.changes.keys()) if (!this.stored.has(file) && !reached.has(file)) this.changes.delete(file);
  }

  knows(file: string): boolean {
    return this.stored.has(file);
  }

  /** Files in a folder, at any depth, that are at hand. */
  below(folder: string): string[] {
    return [...this.stored.keys()].filter(file => file.startsWith(`${folder}/`));
  }

  get size(): number {
    return this.stored.size;
  }

  /** The files whose text is at hand. */
  get readable(): string[] {
    return [...this.stored].flatMap(([file, stored]) => ('text' in stored ? [file] : []));
  }

  problemOf(file: string): ReadProblem | undefined {
    const stored = this.stored.get(file);
    return stored !== undefined && 'problem' in stored ? stored.problem : undefined;
  }

  specOf(file: string): SpecText | undefined {
    const stored = this.stored.get(file);
    if (stored === undefined || 'problem' in stored) return undefined;
    if (stored.spec !== undefined) return stored.spec;
    this.parses++;
    const spec = { file: this.files.show(file), parsed: this.parse(stored.text) };
    stored.spec = spec;
    stored.used = usesOf(spec).flatMap(use => this.files.resolve(file, use.path) ?? []);
    return spec;
  }

  /** Reads a file and all it uses, as far as they are not at hand. */
  async load(file: string): Promise<void> {
    const wanted = [file];
    const seen = new Set<string>();
    for (let next = wanted.shift(); next !== undefined && seen.size <= MOST_FILES; next = wanted.shift()) {
      if (seen.has(next)) continue;
      seen.add(next);
      while (!this.stored.has(next)) await this.read(next);
      wanted.push(...this.usedBy(next));
    }
  }

  /** The files that a file leads to through `use`, as far as they are at hand; itself first. */
  reachedFrom(file: string): Set<string> {
    return reached(file, at => this.usedBy(at));
  }

  /** The files that a file led to when each on the way was last looked into; itself first. Parses nothing. */
  lastReachedFrom(file: string): Set<string> {
    return reached(file, at => this.lastUsedBy(at));
  }

  private async read(file: string): Promise<void> {
    const before = this.changes.get(file);
    const result = await this.files.read(file);
    if (this.changes.get(file) !== before) return;
    this.stored.set(file, 'text' in result ? { text: result.text, used: [] } : result);
  }

  private usedBy(file: string): readonly string[] {
    this.specOf(file);
    return this.lastUsedBy(file);
  }

  private lastUsedBy(file: string): readonly string[] {
    const stored = this.stored.get(file);
    return stored !== undefined && 'text' in stored ? stored.used : [];
  }

  private changed(file: string): void {
    this.changes.set(file, (this.changes.get(file) ?? 0) + 1);
  }
}

function reached(file: string, usedBy: (file: string) => readonly string[]): Set<string> {
  const found = new Set([file]);
  for (const at of found) for (const used of usedBy(at)) found.add(used);
  return found;
}
