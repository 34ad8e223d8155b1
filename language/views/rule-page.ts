import { listed } from '../findings/listed.ts';
import type { Accept, Concern, Rule } from '../job/rule.ts';
import type { DeclaredPart, DeclaredRule } from '../lowering/rule-pages.ts';
import { howLong } from './how-long.ts';
import { conditionsInWords, needInWords } from './rule-prose.ts';

/** How a rule stands in a job. */
export interface Standing {
  readonly file: string;
  /** Absent where the job is not checked by it. */
  readonly rule?: Rule;
  /** It is one's own, and a rule that ships has the same name. */
  readonly isOverShipped: boolean;
  /** What the job sets aside of it. */
  readonly accepts: readonly Accept[];
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
    changes(name, declared, standing),
    ...examples(declared)
  ].join('\n\n')}\n`;
}

const SEVERITY_WORDS = { error: 'an error', warning: 'a warning', note: 'a note' } as const;

function standingIn({ file, rule, isOverShipped, accepts }: Standing, declared: readonly DeclaredRule[]): string[] {
  if (rule === undefined && declared.some(({ hasFault }) => hasFault))
    return [`It has an error, so the job in ${file} is not checked by it yet. To see it write: paving check ${file}`];
  if (rule === undefined) return [`The job in ${file} is not checked by it.`];
  const treated = isTreated(rule, declared)
    ? [`The job in ${file} treats it as ${SEVERITY_WORDS[rule.severity]}.`]
    : [];
  const others = listed(
    rule.yieldsTo.map(other => `\`${other}\``),
    'or'
  );
  const over = isOverShipped ? ['It stands over the rule of this name that ships.'] : [];
  return [
    ...over,
    ...treated,
    ...(others === '' ? [] : [`It is not told of things that ${others} applies to.`]),
    ...accepts.map(setAside)
  ];
}

/** The job, or a rulebook of it, makes it count for more or less. */
function isTreated({ key, severity }: Rule, declared: readonly DeclaredRule[]): boolean {
  return declared.find(each => each.key === key)?.severity !== severity;
}

function setAside(accept: Accept): string {
  const thing = accept.target === 'site' ? 'the site' : `\`${accept.thing}\``;
  return `The job sets it aside on ${thing} ${howLong(accept)}: “${accept.reason}”`;
}

// ---- what is asked ----

function asked(declared: DeclaredRule): string[] {
  const { severity, isAboutSafety, rulebook, file } = declared;
  const who = `${rulebook ?? file}: ${SEVERITY_WORDS[severity]}${isAboutSafety ? ', for the safety of people' : ''}.`;
  const groups = together(declared.parts);
  return groups.flatMap(([part, ...others], index) => {
    const lines = [...needs(part, others), ...part.tells.map(tells => `it tells: “${tells}”`)];
    const isLast = groups[index + 1]?.[0].source !== part.source;
    const own =
      part.severity === severity
        ? ''
        : `${SEVERITY_WORDS[part.severity].replace(/^a/, 'A')}, for it rests on practice or memory. `;
    return [
      `${index === 0 ? `${who} ` : ''}${own}${ofWhat(part, others.length > 0)}:`,
      lines.map(line => `- ${line}`).join('\n'),
      ...(isLast ? [`Where from: ${part.source.replace(/^Safety\. /, '')}`] : [])
    ];
  });
}

type Group = [DeclaredPart, ...DeclaredPart[]];

/** A part for areas with a base and one for those without any stand together, where the rest of them is alike. */
function together(parts: readonly DeclaredPart[]): Group[] {
  const groups = new Map<string, Group>();
  parts.forEach((part, index) => {
    const base = part.when.find(isOfBase);
    const likeness = [part.concerns, part.source, ...part.when.filter(each => !isOfBase(each)), ...part.tells];
    const name = base === undefined ? `${index}` : likeness.join('\n');
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [part]);
    else group.push(part);
  });
  return [...groups.values()];
}

function isOfBase(condition: string): boolean {
  return /^base (?:at most|more than) 0 (?:in|mm)$/.test(condition);
}

/** What is needed with a base and without one is told once; so is what is needed whether or not something is said. */
function needs(part: DeclaredPart, others: readonly DeclaredPart[]): string[] {
  const all = [part, ...others];
  const written = new Set(all.flatMap(each => each.needs));
  const told = [...written].flatMap(need => {
    const [, always, not] = /^(.* when \S+ is )(not )?said$/.exec(need) ?? [];
    const isAlways = always !== undefined && written.has(`${always}said`) && written.has(`${always}not said`);
    if (isAlways && not !== undefined) return [];
    const [asking, ...more] = all.filter(each => each.needs.includes(need)) as Group;
    const isOfAll = more.length + 1 === all.length;
    const words = isAlways ? need.replace(/ when .*/, '') : need;
    return needInWords(part.concerns, words, isOfAll ? [] : asking.when.filter(isOfBase));
  });
  return [...new Set(told)];
}

const EACH: Readonly<Record<Concern, string>> = {
  area: 'each area',
  layer: 'each layer',
  side: 'each side',
  unit: 'each unit',
  material: 'each material',
  site: 'the site',
  gate: 'each gate and door',
  box: 'each box',
  pipe: 'each pipe',
  drain: 'each drain',
  route: 'each route',
  tape: 'each tape',
  reading: 'each height, gap and slope measured',
  delivery: 'each delivery'
};

function ofWhat({ concerns, when }: DeclaredPart, isWithOthers: boolean): string {
  const told = isWithOthers ? when.filter(each => !isOfBase(each)) : when;
  return `Of ${EACH[concerns]}${conditionsInWords(concerns, told)}`;
}

// ---- how to change it ----

function changes(name: string, declared: readonly DeclaredRule[], standing: Standing | undefined): string {
  const concerns = new Set(declared.flatMap(({ parts }) => parts.map(each => each.concerns)));
  const things = [...new Set([...concerns].flatMap(concern => ACCEPTED_ON[concern]))];
  const isSiteAlone = things.length === 0;
  const which = isSiteAlone ? '' : `; NAME is the ${listed(things, 'or')}`;
  const aside = `To set it aside: \`accept ${name} on ${isSiteAlone ? 'site' : 'NAME'} because "…" until 2027-06-30\`, or at its end \`for good, agreed with "…"\`${which}.`;
  const own = declared.some(({ isShipped }) => isShipped)
    ? ['A rule of your own with this name stands over it: see `paving explain rules`.']
    : [];
  const isTreatedNow = standing?.rule !== undefined && isTreated(standing.rule, declared);
  return [aside, ...(isTreatedNow ? [] : treating(name, declared)), ...own].join(' ');
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
  site: [],
  gate: ['gate or door'],
  box: ['box'],
  pipe: ['pipe'],
  drain: ['drain'],
  route: ['route'],
  tape: [],
  reading: [],
  delivery: ['material or unit']
};

// ---- examples ----

/** More of them tell nothing new. */
const MOST_EXAMPLES = 2;

/** Those of the first rulebook, and of others those that look unlike; at most two of each kind. */
function examples(declared: readonly DeclaredRule[]): string[] {
  const shown = new Set<string>();
  const count = { wrong: 0, right: 0 };
  return declared.flatMap(({ rulebook, file, examples: all }) => {
    const outlines = all.map(({ text }) => outlineOf(text));
    if (outlines.every(outline => shown.has(outline))) return [];
    for (const outline of outlines) shown.add(outline);
    const whose = declared.length > 1 ? `, ${rulebook ?? file}` : '';
    return all
      .filter(({ what }) => ++count[what] <= MOST_EXAMPLES)
      .flatMap(({ what, text }) => [
        `${what === 'wrong' ? 'Wrong' : 'Right'}${whose}:`,
        `\`\`\`paving ${what}\n${text}\n\`\`\``
      ]);
  });
}

/** What is left of an example without its measures, and without the names of what is bought. */
function outlineOf(text: string): string {
  return text
    .replace(/\b(base|sub-base|bed|paving|unit|edging|geotextile|with) +[a-z][a-z0-9-]*/g, '$1')
    .replace(/[0-9][0-9.\/ ]*(?:in|ft|mm|m)?/g, '')
    .replace(/\s+/g, ' ');
}
