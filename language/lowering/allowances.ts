import type { AstNode } from 'langium';
import type { Given, Key, Role } from '../job/job.ts';
import type { Allowances } from '../job/prices.ts';
import type * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { NOT_NEGATIVE, type Context } from './context.ts';
import type { SpecText } from './names.ts';
import { writing } from './said-fix.ts';
import { takingOut } from './said-once.ts';

const GRAINS: readonly Role[] = ['base', 'sub-base', 'bed', 'joint-filler'];
const ALL: readonly Role[] = [...GRAINS, 'edging', 'fixing', 'geotextile', 'concrete'];

interface Allowance {
  readonly as: keyof Allowances;
  /** The roles that know it. */
  readonly of: readonly Role[];
  readonly about: string;
}

const ALLOWANCES: Readonly<Record<string, Allowance>> = {
  loss: { as: 'loss', of: ALL, about: 'What is lost' },
  moisture: { as: 'moisture', of: GRAINS, about: 'Water in stone and sand' },
  settling: { as: 'settling', of: GRAINS, about: 'What loose stone and sand settle on the way' },
  'kept-back': {
    as: 'keptBack',
    of: ['joint-filler'],
    about: 'What is kept back for the second sweeping of the joints'
  }
};

/** What a material says is bought of it besides what is needed; undefined when a fault was told. */
export function readAllowances(
  context: Context,
  text: SpecText,
  key: Key,
  roles: readonly Role[],
  said: ReadonlyMap<string, AstNode>
): Allowances | undefined {
  const allowances: { -readonly [name in keyof Allowances]: Given } = {};
  let sound = true;
  for (const [word, { as, of, about }] of Object.entries(ALLOWANCES)) {
    const item = said.get(word) as ast.MeasureItem | undefined;
    if (item === undefined) continue;
    const share = readShare(context, text, `${key}/${word}`, item, word);
    if (share === undefined) sound = false;
    else if (roles.length > 0 && !roles.some(role => of.includes(role)))
      context.fault(
        text,
        key,
        item,
        'wrong-role',
        `${about} is told with ${of.join(', ')}; the role of this is ${roles.join(', ')}. Take this out.`,
        { harmless: true, fixes: [takingOut(context, text, item)] }
      );
    else allowances[as] = share;
  }
  return sound ? allowances : undefined;
}

/** A share of what is needed, less than all of it. */
function readShare(context: Context, text: SpecText, key: Key, item: ast.MeasureItem, word: string): Given | undefined {
  const share = context.given(text, key, item.value as Expression | undefined, '', NOT_NEGATIVE);
  if (share === undefined || share.value < 1) return share;
  const isBare = /^[0-9.]+$/.test(share.written) && share.value < 100;
  return context.fault(
    text,
    key,
    item,
    'out-of-range',
    `This is a share of what is needed: write \`${word} 5 %\`, not \`${share.written}\`.`,
    { property: 'value', fixes: isBare ? [writing(`${share.written} %`)] : [] }
  );
}
