import { MEMBER_NAMES } from '../findings/members/members.ts';
import type { Concern, Rule } from '../job/rule.ts';
import type { DeclaredPart, DeclaredRule } from '../lowering/rule-pages.ts';

/** How a rule stands in a job. */
export interface Standing {
  readonly file: string;
  /** Absent where the job is not checked by it. */
  readonly rule?: Rule;
  /** It is one's own, and a rule that ships has the same name. */
  readonly isOverShipped: boolean;
}

/** The page about a rule, in Markdown: what it is about, what it asks and by whose word, how to change it, examples. */
export function rulePage(name: string, declared: readonly DeclaredRule[], standing?: Standing): string {
  const title = declared.find(each => each.title !== undefined)?.title ?? name;
  const about = declared.find(each => each.about.length > 0)?.about ?? [];
  const engineer = new Set(declared.flatMap(each => each.engineer));
  return `${[
    `# ${title}`,
    ...about,
    ...(standing === undefined ? [] : standingIn(standing, declared)),
    'What is asked, and where from:',
    ...declared.flatMap(asked),
    ...engineer,
    changes(name, declared),
    ...declared.flatMap(each => examples(each, declared))
  ].join('\n\n')}\n`;
}

const SEVERITY_WORDS = { error: 'an error', warning: 'a warning', note: 'a note' } as const;

function standingIn({ file, rule, isOverShipped }: Standing, declared: readonly DeclaredRule[]): string[] {
  if (rule === undefined) return [`The job in ${file} is not checked by it.`];
  const asDeclared = declared.find(({ key }) => key === rule.key)?.severity;
  const treated =
    asDeclared === rule.severity ? [] : [`The job in ${file} treats it as ${SEVERITY_WORDS[rule.severity]}.`];
  const others = rule.yieldsTo.map(other => `\`${other}\``).join(' or ');
  const over = isOverShipped ? ['It stands over the rule of this name that ships.'] : [];
  return [...over, ...treated, ...(others === '' ? [] : [`It is not told of things that ${others} applies to.`])];
}

// ---- what is asked ----

function asked(declared: DeclaredRule): string[] {
  const { parts, severity, isAboutSafety, rulebook, file } = declared;
  const who = `${rulebook ?? file}: ${SEVERITY_WORDS[severity]}${isAboutSafety ? ', for the safety of people' : ''}.`;
  return parts.flatMap((part, index) => {
    const lines = [...part.needs.map(needInWords), ...part.tells.map(tells => `it tells: “${tells}”`)];
    const isLast = parts[index + 1]?.source !== part.source;
    return [
      `${index === 0 ? `${who} ` : ''}${ofWhat(part)}:`,
      lines.map(line => `- ${line}`).join('\n'),
      ...(isLast ? [`Where from: ${part.source.replace(/^Safety\. /, '')}`] : [])
    ];
  });
}

const EACH: Readonly<Record<Concern, string>> = {
  area: 'each area',
  layer: 'each layer',
  side: 'each side',
  unit: 'each unit that is laid',
  material: 'each material that is used',
  site: 'the site'
};

function ofWhat({ concerns, when }: DeclaredPart): string {
  const where = when.map(condition => `where ${inWords(condition)}`);
  return `Of ${[EACH[concerns], ...where].join(', ')}`;
}

function needInWords(needs: string): string {
  const [test, condition] = needs.split(' when ') as [string, string?];
  return `${inWords(test)}${condition === undefined ? '' : `, where ${inWords(condition)}`}`;
}

/** A condition or need as one would say it; names of things stay as they are. */
function inWords(written: string): string {
  const phrased = PHRASES.reduce((text, [rule, plain]) => text.replaceAll(rule, plain), written);
  return phrased
    .replace(/[a-z]+(?:-[a-z]+)*/g, name => (MEMBER_NAMES.has(name) ? plainName(name) : name))
    .replace(/[0-9]{5,}/g, number => number.replace(/(?<=[0-9])(?=(?:[0-9]{3})+$)/g, ','))
    .replaceAll(/, (?![0-9])/g, ' or ')
    .replaceAll(' * ', ' times ');
}

/** What is said in other words than those of the rule. */
const PHRASES: readonly (readonly [string, string])[] = [
  ['drainage is poorly', 'it drains poorly'],
  ['drainage is well', 'it drains well'],
  ['holds is nothing', 'nothing holds the paving there'],
  ['holds is paving', 'the paving is held there'],
  ['made-of is said', 'units are laid'],
  ['winters is freeze', 'it freezes in winter'],
  ['winters is mild', 'it is mild in winter']
];

function plainName(name: string): string {
  return PLAIN_NAMES[name] ?? name.replaceAll('-', ' ');
}

/** Names that read badly in a sentence. */
const PLAIN_NAMES: Readonly<Record<string, string>> = {
  'base-past-edging': 'base past the edging',
  bearing: 'bearing ratio of the ground',
  'dig-deepest': 'deepest dig',
  'edging-footing': 'footing of the edging',
  face: 'area of the face',
  'made-of': 'material of the unit',
  meets: 'what it meets'
};

// ---- how to change it ----

function changes(name: string, declared: readonly DeclaredRule[]): string {
  const concerns = new Set(declared.flatMap(({ parts }) => parts.map(each => each.concerns)));
  const things = [...new Set([...concerns].flatMap(concern => ACCEPTED_ON[concern]))];
  const isSiteAlone = things.length === 0;
  const which = isSiteAlone ? '' : `; NAME is the ${listed(things)}`;
  const aside = `To set it aside: \`accept ${name} on ${isSiteAlone ? 'site' : 'NAME'} because "…" until 2027-03-31\`, or at its end \`for good, agreed with "…"\`${which}.`;
  const own = declared.some(({ isShipped }) => isShipped)
    ? ['A rule of your own with this name stands over it: see `paving explain rules`.']
    : [];
  return [aside, ...treating(name, declared), ...own].join(' ');
}

/** Nobody is told how to make light of a danger. */
function treating(name: string, declared: readonly DeclaredRule[]): string[] {
  if (declared.some(({ isAboutSafety }) => isAboutSafety)) return [];
  const { severity } = declared[0]!;
  const other = severity === 'warning' ? 'note' : 'warning';
  return [`\`treat ${name} as ${other}\` in the \`job\` makes it count for ${severity === 'note' ? 'more' : 'less'}.`];
}

/** Things with names of their own on which it can be set aside; what is asked of a unit is often told of its area. */
const ACCEPTED_ON: Readonly<Record<Concern, readonly string[]>> = {
  area: ['area'],
  layer: ['area'],
  side: ['area'],
  unit: ['area', 'unit'],
  material: ['area', 'material'],
  site: []
};

function listed(words: readonly string[]): string {
  return [words.slice(0, -1).join(', '), words.at(-1)!].filter(text => text !== '').join(' or ');
}

// ---- examples ----

function examples({ rulebook, file, examples: all }: DeclaredRule, declared: readonly DeclaredRule[]): string[] {
  const whose = declared.length > 1 ? `, ${rulebook ?? file}` : '';
  return all.flatMap(({ what, text }) => [
    `${what === 'wrong' ? 'Wrong' : 'Right'}${whose}:`,
    `\`\`\`paving ${what}\n${text}\n\`\`\``
  ]);
}
