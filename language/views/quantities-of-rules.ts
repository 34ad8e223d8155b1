import { CONCERNS, membersOf } from '../findings/members/members.ts';
import type { Member } from '../findings/members/member.ts';
import type { Concern } from '../job/rule.ts';

/** What rules can look at, as lists in Markdown: one for each kind of thing. */
export function quantitiesOfRules(): string {
  return CONCERNS.map(concern => `**${HEADS[concern]}**\n\n${list(concern)}`).join('\n\n');
}

/** What a thing has from its area and site stands there. */
const HEADS: Readonly<Record<Concern, string>> = {
  area: 'concerns area: these, and those of the site',
  layer: 'concerns layer: these, and those of its area and the site',
  side: 'concerns side: these, and those of its area and the site',
  unit: 'concerns unit: these, and those of its area and the site',
  material: 'concerns material: these, and those of its area and the site',
  site: 'concerns site',
  gate: 'concerns gate: gates and doors; these, and those of the site',
  box: 'concerns box: these, and those of the site',
  pipe: 'concerns pipe: these, and those of the site',
  drain: 'concerns drain: these, and those of the site',
  route: 'concerns route: these, and those of the site',
  tape: 'concerns tape: distances read between points; these, and those of the site',
  reading: 'concerns reading: what was measured; these, and those of the site',
  delivery: 'concerns delivery: these, and those of the site'
};

function list(concern: Concern): string {
  return membersOf(concern)
    .filter(member => member.of === concern)
    .map(line)
    .join('\n');
}

function line(member: Member): string {
  const writes = member.write === undefined ? '' : ' `fix` can write it.';
  return `- \`${member.name}\` (${kindOf(member)}): ${member.describe}.${writes}`;
}

const KINDS: Readonly<Record<string, string>> = {
  m: 'length',
  m2: 'area',
  m3: 'volume',
  kg: 'mass',
  'kg/m3': 'density',
  '': 'share, slope or count',
  degrees: 'angle'
};

function kindOf({ measure, choices }: Member): string {
  if (measure !== 'words') return KINDS[measure] ?? measure;
  return choices === undefined ? 'name' : choices.join(', ');
}
