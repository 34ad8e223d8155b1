import type { Country, Role } from '../job/job.ts';
import { measureText } from '../measures/measures.ts';
import { isKeptOut, isLet, isMaterial, type Let } from '../syntax/generated/ast.ts';
import { Context } from './context.ts';
import { Names, namesOf, type Declared, type Kind, type SpecText } from './names.ts';
import { isShipped, type Project } from './project.ts';
import { STANDARD_NAMES } from './things.ts';

/** Something that a text may name. */
export interface AtHand {
  readonly declared: Declared;
  /** It ships, and nothing of one's own stands over it. */
  readonly isShipped: boolean;
}

/** Everything of a kind that a text may name, each name once: its own, what it uses, what ships. */
export function atHand(text: SpecText, project: Project, kind: Kind): AtHand[] {
  const found = new Map<string, AtHand>();
  for (const seen of project.visible.get(text) ?? [text])
    for (const declared of namesOf(seen).all)
      if (declared.kind === kind && !found.has(declared.name))
        found.set(declared.name, { declared, isShipped: isShipped(project, seen) });
  return [...found.values()];
}

/** The areas of every file of the job: neighbours meet across files. */
export function areasOfJob({ texts }: Project): Declared[] {
  const areas = texts.flatMap(text => namesOf(text).all.filter(({ kind }) => kind === 'area'));
  return [...new Map(areas.reverse().map(area => [area.name, area])).values()].reverse();
}

/** The name of the area that a box, pit or inset says it is in. */
export function areaOfKeptOut({ node }: Declared): string | undefined {
  return isKeptOut(node) ? node.area?.$refText : undefined;
}

/** The words of a material's `role`. */
export function rolesOf({ node }: Declared): readonly string[] {
  return isMaterial(node) ? node.items.flatMap(item => (item.$type === 'RoleItem' ? item.roles : [])) : [];
}

/** The material that stands in where a job of that country names none. */
export function standardMaterial(role: Role, country: Country): string | undefined {
  return STANDARD_NAMES[country][role];
}

/** The SI measure of each `let` of one's own that can be worked out, by name; empty for a plain number. */
export function measuresOfLets(text: SpecText, project: Project): ReadonlyMap<string, string> {
  const context = new Context(new Names(project.visible), () => false);
  const measures = new Map<string, string>();
  for (const { declared, isShipped } of atHand(text, project, 'let')) {
    if (isShipped || !isLet(declared.node)) continue;
    const { value } = context.watch(() => context.letValue(declared.text, declared.node as Let));
    if (value !== undefined) measures.set(declared.name, measureText(value.dimensions));
  }
  return measures;
}
