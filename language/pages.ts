import { isKnownName } from './lowering/other-names.ts';
import guide from './guides/rules.md';
import { SHIPPED_RULES } from './library/shipped.ts';
import { lower } from './lowering/lower.ts';
import type { Project } from './lowering/project.ts';
import { declaredRules } from './lowering/rule-pages.ts';
import { gather } from './project.ts';
import { ShippedTexts } from './shipped-texts.ts';
import { createParse } from './syntax/parse.ts';
import { quantitiesOfRules } from './views/quantities-of-rules.ts';
import { rulePage } from './views/rule-page.ts';

/** The guide to rules of one's own, with all that rules can look at. */
export const GUIDE = 'rules';

/** The pages that are made from what ships, in Markdown by name: one for each rule, and the guide. */
export function shippedPages(): ReadonlyMap<string, string> {
  const parse = createParse(isKnownName);
  const texts = new ShippedTexts(parse, true);
  const { shipped, allRulebooks: all } = texts;
  const { project } = gather(shipped, { shipped, rulebookOf: () => undefined, all }, () => NOTHING_USED);
  const pages = SHIPPED_RULES.map((name): [string, string] => [name, rulePage(name, declaredRules(project, name))]);
  return new Map([...pages, [GUIDE, `${guide.trimEnd()}\n\n${quantitiesOfRules()}\n`]]);
}

/** What ships uses no files. */
const NOTHING_USED = { id: 'use-missing', message: '' };

/** The page of a rule as it stands in a file: in a job the one that it is checked by. Undefined where there is none. */
export function pageOfRule(project: Project, name: string): string | undefined {
  const declared = declaredRules(project, name);
  if (declared.length === 0) return undefined;
  const { job } = lower(project);
  const rule = job?.rules.find(each => each.name === name);
  const own = declared.filter(({ isShipped }) => !isShipped);
  const shown = rule === undefined ? own : declared.filter(({ key }) => key === rule.key);
  const all = shown.length === 0 ? declared : shown;
  const { file } = project.main;
  const isOverShipped = all.every(({ isShipped }) => !isShipped) && own.length < declared.length;
  const accepts = job?.accepts.filter(each => each.rule === name) ?? [];
  return rulePage(name, all, job && { file, isOverShipped, accepts, ...(rule === undefined ? {} : { rule }) });
}
