import type { Finding } from '../../language/findings/finding.ts';
import type { Need, Rule, RuleLimit, SaysPart } from '../../language/job/rule.ts';

interface NeedOfRule {
  /** Rule, part and need, and what it says. */
  readonly name: string;
  readonly source: string;
  /** What its message looks like. */
  readonly pattern: RegExp;
  /** How many letters of its message stand in the rule. */
  readonly letters: number;
}

/** All needs of a rule. */
export function needsOf(rule: Rule): NeedOfRule[] {
  return rule.cases.flatMap(({ needs, source }, part) =>
    needs.map((need, at) => {
      const pieces = need.says.map(piece => patternOf(piece, need));
      const name = `${rule.key}, part ${part + 1}, need ${at + 1}: ${pieces.join('')}`;
      const letters = pieces.filter(piece => piece !== ANYTHING).join('').length;
      // A fix that writes more than is needed says which rule asks for it.
      const ending = pieces.join('').replace(/\\\.$/, '(?:; [a-z-]+ asks .+)?\\.');
      return { name, source, pattern: new RegExp(`^${ending}$`, 'i'), letters };
    })
  );
}

/** The name of the need that a finding tells of: of several that it looks like, the one that says most; else nothing. */
export function needTold({ message, source }: Pick<Finding, 'message' | 'source'>, rule: Rule): string {
  const alike = needsOf(rule).filter(need => need.source === source && need.pattern.test(message));
  return alike.sort((one, other) => other.letters - one.letters)[0]?.name ?? '';
}

const ANYTHING = '.+';

/** Texts and plain limits as they stand, all else anything. */
function patternOf(piece: SaysPart, { test }: Need): string {
  if ('text' in piece) return literal(piece.text);
  const isLimit = 'value' in piece && piece.value.is === 'worked' && piece.value.name === 'needed';
  return isLimit && test?.is === 'compared' ? limitOf(test.limit) : ANYTHING;
}

function limitOf({ imperial, metric }: RuleLimit): string {
  const written = [imperial, metric].map(sum => (sum.is === 'number' ? sum.written : ''));
  // Large numbers are told with their thousands apart.
  const plain = written.filter(text => text !== '' && !/^\d{5}/.test(text));
  return plain.length === written.length ? `(?:${plain.map(literal).join('|')})` : ANYTHING;
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
