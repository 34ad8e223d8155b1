import { GrammarUtils } from 'langium';
import type { Place } from '../findings/finding.ts';
import type { Rule } from '../job/rule.ts';
import type { ParsedText } from '../syntax/parse.ts';
import * as ast from '../syntax/generated/ast.ts';
import { KEYWORD, placeOf } from './context.ts';
import { rulesAndSystem } from './job-words.ts';
import { Names, namesOf, type Declared, type SpecText } from './names.ts';
import { isShipped, type Project } from './project.ts';
import { leadsTo, systemOfBook } from './rulebook-leads.ts';
import { isCountry } from './things.ts';

/** An example of a rule, as it stands in its text. */
export interface RuleExample {
  readonly rule: Rule;
  readonly what: 'wrong' | 'right';
  /** What stands between its braces. */
  readonly written: string;
  /** The text that the rule stands in, and its rulebook. */
  readonly text: SpecText;
  readonly book?: Declared;
  /** Of the word `wrong` or `right`. */
  readonly place: Place;
  /** Just behind its open brace, from 1. */
  readonly inside: { readonly line: number; readonly column: number };
}

/** The examples of a rule; one without its braces is none. */
export function examplesOf({ text, node }: Declared, rule: Rule): RuleExample[] {
  const bookNode = namesOf(text).bookOf.get(node);
  const book = bookNode && namesOf(text).all.find(each => each.node === bookNode);
  return (node as ast.Rule).items.filter(ast.isRuleExample).flatMap(example => {
    const brace = GrammarUtils.findNodeForKeyword(example.$cstNode, '{');
    const end = GrammarUtils.findNodeForKeyword(example.$cstNode, '}');
    if (brace === undefined || end === undefined) return [];
    const { line, character } = brace.range.end;
    return {
      rule,
      what: example.what,
      written: text.parsed.text.slice(brace.end, end.offset),
      text,
      ...(book === undefined ? {} : { book }),
      place: placeOf(text, example, KEYWORD),
      inside: { line: line + 1, column: character + 1 }
    };
  });
}

/** The job that an example stands in: the usual materials and measures are those of its rulebook, else of the job. */
export function jobsOfExamples(project: Project): (example: RuleExample) => string {
  const names = new Names(project.visible);
  const ofJob = rulesAndSystem(project);
  const jobs = new Map<Declared | undefined, string>();
  return ({ book }) => {
    const known = jobs.get(book);
    if (known !== undefined) return known;
    const leads = book === undefined ? [] : leadsTo(names, book);
    const country = leads.map(({ name }) => name).find(isCountry) ?? ofJob.country;
    const system = leads.flatMap(each => systemOfBook(each) ?? [])[0] ?? ofJob.system;
    // What is usual there counts, as far as the rulebook is at hand.
    const rules = names.peek(project.main, 'rulebook', country) === undefined ? '' : `rules ${country}, `;
    const job = `job "Example" { ${rules}show ${system === 'metric' ? 'metric' : 'feet-and-inches'} }`;
    jobs.set(book, job);
    return job;
  };
}

/** An example as a job of its own that sees what the text of its rule sees, but for areas and the site. */
export function projectOfExample({ text }: RuleExample, parsed: ParsedText, project: Project): Project {
  const main: SpecText = { file: `example in ${text.file}`, parsed };
  const seen = new Map(seesOf(text, project).map(each => [each, isShipped(project, each) ? each : asSeen(each)]));
  const visible = new Map<SpecText, readonly SpecText[]>([[main, [main, ...seen.values()]]]);
  for (const [each, shown] of seen)
    visible.set(
      shown,
      seesOf(each, project).flatMap(other => seen.get(other) ?? [])
    );
  return { main, texts: [main], visible, shipped: project.shipped, rulebooks: project.rulebooks };
}

function seesOf(text: SpecText, { visible }: Project): readonly SpecText[] {
  return visible.get(text) ?? [text];
}

/** Words that begin what an example can't see, or what changes nothing in it. */
const NOT_SEEN: ReadonlySet<string> = new Set([
  ...['job', 'use', 'site', 'area', 'box', 'pit', 'inset'],
  ...['source', 'rulebook', 'rule', 'accept']
]);

/** A text with what is seen of it alone. */
function asSeen({ file, parsed }: SpecText): SpecText {
  const elements = parsed.root.elements.filter(
    element => !ast.isSite(element) && !ast.isArea(element) && !ast.isKeptOut(element)
  );
  return { file, parsed: { ...parsed, root: { ...parsed.root, elements } } };
}

/** All that an example can see outside itself, as written. */
export function seenByExample({ text }: RuleExample, project: Project): string {
  return seesOf(text, project)
    .filter(each => !isShipped(project, each))
    .flatMap(({ parsed }) =>
      parsed.chunks
        .filter(({ word }) => !NOT_SEEN.has(word))
        .map(({ start, end }) => parsed.text.slice(start, end).trimEnd())
    )
    .join('\n');
}
