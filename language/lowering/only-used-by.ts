import type { Declared, SpecText } from './names.ts';
import { occurrencesIn } from './occurrences.ts';
import type { Project } from './project.ts';

/** Which declarations of a text use which others. */
export class Uses {
  /** By what is used, the offsets of the declarations that use it. */
  private readonly users = new Map<Declared, Set<number>>();

  constructor(text: SpecText, project: Project) {
    const starts = text.parsed.root.elements.map(element => element.$cstNode?.offset ?? 0);
    let at = 0;
    for (const { start, declared, isDeclaration } of occurrencesIn(text, project)) {
      while (at + 1 < starts.length && starts[at + 1]! <= start) at++;
      if (isDeclaration || declared === undefined || declared.text !== text) continue;
      const users = this.users.get(declared) ?? new Set();
      this.users.set(declared, users.add(starts[at]!));
    }
  }

  /** What would be used nowhere without a declaration, in the order in which it would be found out. */
  onlyBy(declared: Declared): Declared[] {
    const gone = new Set([offsetOf(declared)]);
    const found: Declared[] = [];
    for (let before = -1; before < found.length;) {
      before = found.length;
      for (const [used, users] of this.users) {
        const isThing = used.kind !== 'area' && used.kind !== 'kept-out' && used.kind !== 'benchmark';
        if (!isThing || gone.has(offsetOf(used)) || [...users].some(user => !gone.has(user))) continue;
        gone.add(offsetOf(used));
        found.push(used);
      }
    }
    return found;
  }
}

function offsetOf({ node }: Declared): number {
  return node.$cstNode?.offset ?? 0;
}
