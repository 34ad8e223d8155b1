import type { SpecText } from './lowering/names.ts';
import { usesOf } from './lowering/uses.ts';
import { MOST_FILES, type ReadProblem, type SpecFiles } from './project.ts';
import type { Parse } from './syntax/parse.ts';

type Stored = { readonly text: string; spec?: SpecText } | { readonly problem: ReadProblem };

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
    this.stored.set(file, { text });
  }

  drop(file: string): void {
    this.changed(file);
    this.stored.delete(file);
  }

  knows(file: string): boolean {
    return this.stored.has(file);
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
    stored.spec = { file: this.files.show(file), parsed: this.parse(stored.text) };
    return stored.spec;
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
    const reached = new Set([file]);
    for (const at of reached) for (const used of this.usedBy(at)) reached.add(used);
    return reached;
  }

  private async read(file: string): Promise<void> {
    const before = this.changes.get(file);
    const result = await this.files.read(file);
    if (this.changes.get(file) !== before) return;
    this.stored.set(file, result);
  }

  private usedBy(file: string): string[] {
    const spec = this.specOf(file);
    return spec === undefined ? [] : usesOf(spec).flatMap(use => this.files.resolve(file, use.path) ?? []);
  }

  private changed(file: string): void {
    this.changes.set(file, (this.changes.get(file) ?? 0) + 1);
  }
}
