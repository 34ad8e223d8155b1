import { FAULTS } from '../findings/fault-list.ts';
import type { Key } from '../job/job.ts';
import type { Accept, Rule } from '../job/rule.ts';
import { SHIPPED_RULES } from '../library/shipped.ts';
import * as ast from '../syntax/generated/ast.ts';
import { type Context, type Property } from './context.ts';
import { checkDay } from './days.ts';
import { keyOf } from './keys.ts';
import type { Kind, SpecText } from './names.ts';
import type { Project } from './project.ts';
import type { Rules } from './rules.ts';
import { takingOut } from './said-once.ts';

/** What something can be set aside on; the site has no name. */
const THINGS: readonly Kind[] = ['area', 'kept-out', 'unit', 'material', 'gate', 'drain', 'pipe', 'route'];

/**
 * What is set aside in all files of a job. `checkedBy`: the job's rules; undefined where there is no job, and names that
 * only a job leads to are not looked for.
 */
export function readAccepts(
  context: Context,
  project: Project,
  rules: Rules,
  checkedBy: readonly Rule[] | undefined
): Accept[] {
  const standing = new Set(checkedBy?.map(({ name }) => name));
  const first = new Map<Key, { readonly node: ast.Accept; readonly text: SpecText }>();
  return project.texts.flatMap(text =>
    text.parsed.root.elements.filter(ast.isAccept).flatMap(node => {
      if (context.isBroken(text, node)) return [];
      const said = partsOf(context, text, node);
      if (checkedBy === undefined) return [];
      const rule = ruleOf(context, text, node, rules, standing);
      const thing = thingOf(context, text, node);
      if (said === undefined || rule === undefined || thing === undefined) return [];
      const key = `accept:${rule} ${thing.key}`;
      const before = first.get(key);
      if (before !== undefined) {
        const message = `What ${rule} finds on ${thing.name} is set aside twice; the first counts.`;
        context.fault(text, key, node, 'said-twice', message, {
          harmless: true,
          related: [{ ...before, message: 'Set aside first here.' }],
          fixes: [takingOut(context, text, node, { like: before.node })]
        });
        return [];
      }
      first.set(key, { node, text });
      notePlaces(context, key, text, node);
      return [{ key, rule, target: thing.key, thing: thing.name, ...said }];
    })
  );
}

/** The places of an `accept`, of its rule and thing, and of all that goes with it when it is taken out. */
function notePlaces(context: Context, key: Key, text: SpecText, node: ast.Accept): void {
  context.place(key, text, node);
  context.place(`${key}/rule`, text, node, 'rule');
  context.place(`${key}/thing`, text, node, thingPart(node));
  context.places.set(`${key}/out`, context.changes.takenOut(text, node).place);
}

function thingPart(node: ast.Accept): Property {
  return node.site ? 'site' : 'thing';
}

// ---- what it says ----

/** Why, and how long; each part that is missing is told behind the one before it. */
function partsOf(
  context: Context,
  text: SpecText,
  node: ast.Accept
): Pick<Accept, 'reason' | 'until' | 'agreedWith'> | undefined {
  const missing = (property: Property, message: string): undefined =>
    context.fault(text, `accept:${node.rule?.$refText ?? ''}`, node, 'accept-incomplete', message, {
      property,
      harmless: true
    });
  const hasThing = node.site || node.thing !== undefined;
  const thing: Property = hasThing ? thingPart(node) : 'rule';
  if (!hasThing)
    missing(
      thing,
      'This does not say on what. Write behind the rule `on` and the name of an area, a box, a gate or whatever else it is found on; or `on site`.'
    );
  const hasReason = !isEmpty(node.reason);
  if (!hasReason)
    missing(
      node.reason === undefined ? thing : 'reason',
      'This does not say why. Write `because "…"` with the reason, before until when it holds.'
    );
  const last: Property = node.reason === undefined ? thing : 'reason';
  const how = lasting(context, text, node, last, missing);
  return hasThing && hasReason && how !== undefined ? { reason: node.reason!, ...how } : undefined;
}

function lasting(
  context: Context,
  text: SpecText,
  node: ast.Accept,
  last: Property,
  missing: (property: Property, message: string) => undefined
): Pick<Accept, 'until' | 'agreedWith'> | undefined {
  const { until, forGood, agreedWith } = node;
  if (until !== undefined) {
    return checkDay(context, text, 'accept', node, 'until', until) ? { until } : undefined;
  }
  if (!forGood)
    return missing(
      last,
      'This does not say until when. Write `until` and the last day, such as `until 2027-06-30`; or `for good, agreed with "…"`.'
    );
  if (isEmpty(agreedWith))
    return missing(
      agreedWith === undefined ? 'forGood' : 'agreedWith',
      'What is set aside for good needs someone who agreed to it. Write behind `for good`: `, agreed with "…"`.'
    );
  return { agreedWith: agreedWith! };
}

function isEmpty(words: string | undefined): boolean {
  return words === undefined || words.trim() === '';
}

// ---- what it names ----

/** The name of a rule of the job, or of one elsewhere that has no fault: that nothing is judged by it is told later. */
function ruleOf(
  context: Context,
  text: SpecText,
  node: ast.Accept,
  rules: Rules,
  standing: ReadonlySet<string>
): string | undefined {
  const name = node.rule?.$refText;
  if (name === undefined || standing.has(name) || SHIPPED_RULES.includes(name)) return name;
  const key = `accept:${name}`;
  if (Object.hasOwn(FAULTS, name) && context.names.peek(text, 'rule', name) === undefined)
    return context.fault(
      text,
      key,
      node,
      'unknown-name',
      `\`${name}\` is no rule: it tells of a fault in the text, and that can only be mended. Rules alone can be set aside.`,
      { property: 'rule', harmless: true }
    );
  const among = (): string[] => [...standing].sort();
  const found = context.find(text, key, node, 'rule', name, ['rule'], { among });
  if (found === undefined || context.isBroken(found.text, found.node)) return undefined;
  return rules.rule(found) === undefined ? undefined : name;
}

function thingOf(context: Context, text: SpecText, node: ast.Accept): { key: Key; name: string } | undefined {
  if (node.site) return { key: 'site', name: 'site' };
  const name = node.thing?.$refText;
  if (name === undefined) return undefined;
  const isSeen = THINGS.some(kind => context.names.peek(text, kind, name) !== undefined);
  const found =
    (isSeen ? undefined : context.names.anywhere(THINGS, name)) ??
    context.find(text, `accept:${name}`, node, 'thing', name, THINGS);
  return found && { key: keyOf(found), name };
}
