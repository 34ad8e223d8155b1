import type { Bond } from '../job/job.ts';
import type * as ast from '../syntax/generated/ast.ts';
import type { Amount } from './amounts.ts';
import { Context } from './context.ts';
import { Names, type Declared } from './names.ts';
import type { Project } from './project.ts';
import { Things } from './things.ts';

/** What a `let` comes to; undefined while it can't be worked out. */
export function amountOfLet(declared: Declared, project: Project): Amount | undefined {
  return amountsOfLets(project)(declared);
}

/** The same for many of one job: what others are made of is worked out once. */
export function amountsOfLets(project: Project): (declared: Declared) => Amount | undefined {
  const context = contextOf(project);
  return ({ text, node }) => context.letValue(text, node as ast.Let);
}

/** A bond as it is laid; undefined while it can't be read. */
export function bondOf(declared: Declared, project: Project): Bond | undefined {
  return new Things(contextOf(project), project.shipped).bond(declared);
}

/** Faults that are found on the way are told elsewhere. */
function contextOf(project: Project): Context {
  return new Context(new Names(project.visible), () => false);
}
