import type { BoxUse } from '../job/heights.ts';
import type { Given, Key, KeptOut } from '../job/job.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context } from './context.ts';
import type { Heights } from './heights.ts';
import type { SpecText } from './names.ts';
import { saidOnce, takingOut } from './said-once.ts';

type Statements = ReadonlyMap<string, ast.KeptOutItem>;

/** What becomes of a box, and what its lid has to do with heights; of a pit, how far digging keeps away. */
export type OfBox = Pick<KeptOut, 'lid' | 'use' | 'noDig'>;

/** A box that is cut down and buried is paved over: nothing is kept out there. */
export function isPavedOver({ use }: OfBox): boolean {
  return use !== undefined && use.buried && !use.inUse;
}

/** The same of a box as it is written. */
export function isSaidPavedOver(node: ast.KeptOut): boolean {
  const use = node.kind === 'box' ? node.items.find(ast.isBoxUse) : undefined;
  return use !== undefined && !use.used && use.clauses.some(clause => clause.buried);
}

/** What fits a box alone or a pit alone is told where it stands in the other. */
export function clausesThatDoNotFit(context: Context, text: SpecText, key: Key, node: ast.KeptOut): void {
  for (const item of node.items) {
    const of = OF[item.$type];
    if (of === undefined || of.kind === node.kind) continue;
    const message = `${of.why}; ${node.name} is a ${node.kind}. Take this out, or make it a \`${of.kind}\`.`;
    context.fault(text, key, item, 'clause-does-not-fit', message, {
      harmless: true,
      fixes: [takingOut(context, text, item)]
    });
  }
}

export function readBox(
  context: Context,
  heights: Heights,
  text: SpecText,
  key: Key,
  node: ast.KeptOut,
  said: Statements
): OfBox {
  if (node.kind === 'pit') {
    const noDig = readNoDig(context, text, key, said.get('NoDig') as ast.NoDig | undefined);
    return noDig === undefined ? {} : { noDig };
  }
  if (node.kind !== 'box') return {};
  const lidItem = said.get('Lid') as ast.Lid | undefined;
  const lid = lidItem && heights.read(text, `${key}/lid`, lidItem.height);
  const use = readUse(context, text, key, said.get('BoxUse') as ast.BoxUse | undefined);
  return { ...(lid === undefined ? {} : { lid }), ...(use === undefined ? {} : { use }) };
}

function readUse(context: Context, text: SpecText, key: Key, item: ast.BoxUse | undefined): BoxUse | undefined {
  if (item === undefined) return undefined;
  const useKey = context.place(`${key}/use`, text, item);
  const said = saidOnce(context, text, useKey, item.clauses, clause =>
    clause.flush ? 'set flush' : clause.buried ? 'cut down' : 'tray'
  );
  const clause = said.get('tray');
  const tray = clause && readTray(context, text, useKey, item, clause);
  return {
    key: useKey,
    inUse: item.used,
    buried: said.has('cut down'),
    ...(tray === undefined ? {} : { tray })
  };
}

function readTray(
  context: Context,
  text: SpecText,
  useKey: Key,
  item: ast.BoxUse,
  clause: ast.UseClause
): BoxUse['tray'] {
  if (!item.used)
    return context.fault(
      text,
      useKey,
      clause,
      'clause-does-not-fit',
      'A box out of use gets no tray: a paved tray is the cover of a box in use. Take this out, or write `in use`.',
      { harmless: true, fixes: [takingOut(context, text, clause)] }
    );
  const depth = context.given(text, `${useKey}/tray`, clause.depth as Expression | undefined, 'm');
  const unit = clause.unit && context.find(text, useKey, clause, 'unit', clause.unit.$refText, ['unit']);
  return depth && { depth, ...(unit === undefined ? {} : { unit: `unit:${unit.name}` }) };
}

/** A radius; across its circle it is told as twice that. */
function readNoDig(context: Context, text: SpecText, key: Key, item: ast.NoDig | undefined): Given | undefined {
  if (item === undefined) return undefined;
  const said = (item.across ?? item.radius) as Expression | undefined;
  const given = context.given(text, `${key}/no-dig`, said, 'm');
  if (given === undefined || item.across === undefined) return given;
  return { ...given, value: given.value / 2, written: `half of ${given.written}` };
}

/** The kind that has it; insets have statements of their own. */
const OF: Readonly<Partial<Record<ast.KeptOutItem['$type'], { readonly kind: string; readonly why: string }>>> = {
  Lid: { kind: 'box', why: 'Only a box has a lid' },
  BoxUse: { kind: 'box', why: 'Only a box is in use or out of use' },
  NoDig: { kind: 'pit', why: 'Digging keeps away from a pit alone, for the roots in it' }
};
