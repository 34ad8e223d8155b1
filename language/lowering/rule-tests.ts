import { memberOf } from '../findings/members/members.ts';
import type { Condition, RuleSum, Sign, Test } from '../job/rule.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { writtenOf, type Context } from './context.ts';
import { checkNames } from './rule-names.ts';
import { writing } from './said-fix.ts';
import { quantitiesIn, ruleLimit, ruleSum, type RuleScope, type TypedSum } from './rule-sums.ts';

/** A test with what it compares. */
export interface TypedTest {
  readonly test: Test;
  /** The left side of a comparison. */
  readonly compared?: TypedSum;
}

export function ruleCondition(
  context: Context,
  scope: RuleScope,
  node: ast.Condition | undefined
): Condition | undefined {
  if (node === undefined) return undefined;
  const any = node.any.map(({ all }) => all.map(test => ruleTest(context, scope, test)?.test));
  return any.some(all => all.length === 0 || all.includes(undefined)) ? undefined : (any as Condition);
}

export function ruleTest(context: Context, scope: RuleScope, node: ast.Test | undefined): TypedTest | undefined {
  const subject = ruleSum(context, scope, node?.subject as Expression | undefined);
  if (node === undefined || subject === undefined) return undefined;
  if (node.sign !== undefined) return comparison(context, scope, node, subject);
  const { sum } = subject;
  if (sum.is !== 'quantity')
    return context.fault(
      scope.text,
      scope.key,
      node.subject ?? node,
      'wrong-kind',
      `\`${writtenOf(node.subject ?? node)}\` is no name: before \`is\` stands what the rule looks at, such as \`traffic\`.`
    );
  const not = node.not === true || (node.not as unknown) === 'not';
  if (node.said) return { test: { is: 'said', of: sum.name, not } };
  const [word] = node.words;
  const isThere = word === undefined ? undefined : THERE[word];
  if (isThere !== undefined && memberOf(scope.concerns, sum.name)?.choices?.includes(word!) !== true)
    return saidInstead(context, scope, node, sum.name, isThere !== not);
  if (node.words.length === 0) return undefined;
  if (subject.measure !== 'words')
    return context.fault(
      scope.text,
      scope.key,
      node,
      'wrong-kind',
      `\`${sum.name}\` is a number: compare it, such as \`${sum.name} at least …\`, or ask whether it is said.`
    );
  const { choices } = memberOf(scope.concerns, sum.name)!;
  const known = node.words.flatMap((word, index) =>
    choices === undefined ? [word] : (context.word(scope.text, scope.key, node, ['words', index], word, choices) ?? [])
  );
  checkNames(context, scope, node, sum.name);
  return known.length < node.words.length
    ? undefined
    : { test: { is: 'words', of: sum.name, not, words: known, isName: choices === undefined } };
}

/** Words that say whether something is said at all: it is, or it is not. */
const THERE: Readonly<Record<string, boolean>> = {
  ...Object.fromEntries(['there', 'given', 'present', 'needed', 'required', 'yes'].map(word => [word, true])),
  ...Object.fromEntries(['missing', 'absent', 'none', 'nothing', 'no'].map(word => [word, false]))
};

/** `edging is there` */
function saidInstead(context: Context, scope: RuleScope, node: ast.Test, name: string, isThere: boolean): undefined {
  const said = isThere ? 'said' : 'not said';
  return context.fault(
    scope.text,
    scope.key,
    node,
    'unknown-word',
    `Whether there is one is asked by \`said\`: write \`${name} is ${said}\`.`,
    { property: ['words', 0], fixes: node.not || node.words.length > 1 ? [] : [writing(said)] }
  );
}

function comparison(context: Context, scope: RuleScope, node: ast.Test, subject: TypedSum): TypedTest | undefined {
  const subjectWritten = writtenOf(node.subject ?? node);
  if (subject.measure === 'words')
    return context.fault(
      scope.text,
      scope.key,
      node.subject ?? node,
      'wrong-kind',
      `\`${subjectWritten}\` is a name or word, and can't be compared. Write \`${subjectWritten} is …\` or \`${subjectWritten} is said\`.`
    );
  const limit = ruleLimit(context, scope, node.limit, subject);
  if (limit === undefined) return undefined;
  const sign = (node.sign === 'more' || node.sign === 'less' ? `${node.sign} than` : `at ${node.sign!}`) as Sign;
  return { test: { is: 'compared', left: subject.sum, sign, limit }, compared: subject };
}

/** The quantities that conditions and tests look at. */
export function quantitiesOfCondition(condition: Condition | undefined): string[] {
  return (condition ?? []).flat().flatMap(quantitiesOfTest);
}

export function quantitiesOfTest(test: Test): string[] {
  if (test.is !== 'compared') return [test.of];
  const sums: RuleSum[] = [test.left, test.limit.imperial, test.limit.metric];
  return sums.flatMap(quantitiesIn);
}
