import { memberOf, membersOf } from '../../findings/members/members.ts';
import type { Member } from '../../findings/members/member.ts';
import type { Concern } from '../../job/rule.ts';
import { currencyOf } from '../../lowering/job-words.ts';
import { KINDS_OF_MEMBER } from '../../lowering/rule-names.ts';
import { atHand } from '../../lowering/things-at-hand.ts';
import type { Next } from '../../syntax/next-words.ts';
import { firstIndex } from '../../syntax/statement-tree.ts';
import type { BlockName } from '../../syntax/words.ts';
import { WORKED_WORDS } from '../help/rule-words.ts';
import { concernAbove, helpOnChoice, memberHelp, subjectOf } from '../rule-members.ts';
import type { WordHelp } from '../help/help.ts';
import { lastOf } from '../words.ts';
import { thingHelp } from '../thing-help.ts';
import type { Written } from './candidates.ts';
import type { Offer } from './offer.ts';
import { wantedQuantity, type QuantityKind, type WantedQuantity } from './quantities.ts';
import type { Scene } from './scene.ts';
import { wantedOfSale } from './sold-ways.ts';

/** What a rule can look at where the cursor stands, and the words that a quantity can be. */
export function ruleOffers(scene: Scene, begun: Written, next: readonly Next[]): Offer[] {
  const concern = concernHere(scene);
  if (concern === undefined) return [];
  return next.flatMap((each): Offer[] => {
    const property = each.path.at(-1);
    if (property === 'Test.words') return wordsOf(scene, memberOf(concern, subjectOf(begun.tokens) ?? ''), begun);
    if (property === 'RuleFix.quantity')
      return membersOf(concern)
        .filter(({ write }) => write !== undefined)
        .map(memberOffer);
    return each.is === 'Let' ? valuesHere(scene, concern, begun, each) : [];
  });
}

/** What the nearest `concerns` above the cursor says. */
export function concernHere({ cursor }: Scene): Concern | undefined {
  const around = cursor.around.at(-1);
  const rule = around?.opens === 'rule' ? around : undefined;
  const at = firstIndex(cursor.parsed.tokens, ({ startOffset }) => startOffset >= cursor.start);
  return rule && concernAbove(cursor.parsed, rule, at);
}

/** Quantities that fit: all where a comparison begins, those of its kind behind it. */
function valuesHere(scene: Scene, concern: Concern, { word, tokens, kinds }: Written, next: Next): Offer[] {
  const all = membersOf(concern);
  if (word === 'fix') {
    const written = memberOf(concern, tokens[1]?.image ?? '');
    if (written?.measure === 'words') return isFirst(kinds) ? fixWords(scene, written, all) : [];
    return [...workedOffers(), ...fitting(all, written?.measure).map(memberOffer)];
  }
  const isWhole = !/^[-+*/(]$/.test(kinds.at(-1) ?? '');
  if (word === 'says') return [...workedOffers(), ...(isWhole ? all : numbers(all)).map(memberOffer)];
  if (next.path.some(property => property.startsWith('Limit.')))
    return fitting(all, comparedMeasure(concern, tokens)).map(memberOffer);
  return (isWhole ? all : numbers(all)).map(memberOffer);
}

function isFirst(kinds: readonly string[]): boolean {
  return kinds.at(-1) === 'to';
}

/** Words that the quantity can be, or other names that a fix can write there. */
function fixWords(scene: Scene, written: Member, all: readonly Member[]): Offer[] {
  const others = written.choices === undefined ? all.filter(each => isSameName(each, written)) : [];
  return [...choiceOffersOf(scene, written, new Set()), ...others.map(memberOffer)];
}

function isSameName(one: Member, other: Member): boolean {
  return one.measure === 'words' && one.choices === undefined && one.name.endsWith(other.name);
}

function numbers(all: readonly Member[]): Member[] {
  return all.filter(({ measure }) => measure !== 'words');
}

function fitting(all: readonly Member[], measure: string | undefined): Member[] {
  return numbers(all).filter(each => measure === undefined || each.measure === measure);
}

/** The SI measure of what is compared: of the first quantity in its comparison. */
function comparedMeasure(concern: Concern, tokens: Written['tokens']): string | undefined {
  const begins = lastOf(tokens, /^(?:when|needs|and|or)$/);
  const members = tokens.slice(begins + 1).flatMap(({ image }) => memberOf(concern, image) ?? []);
  return members[0]?.measure;
}

function workedOffers(): Offer[] {
  return Object.entries(WORKED_WORDS).map(([word, help]) => offer(word, help));
}

function memberOffer(member: Member): Offer {
  return offer(member.name, memberHelp(member));
}

function wordsOf(scene: Scene, member: Member | undefined, { tokens }: Written): Offer[] {
  const is = lastOf(tokens, /^is$/);
  const said = new Set(tokens.slice(is).map(({ image }) => image));
  return member?.measure === 'words' ? choiceOffersOf(scene, member, said) : [];
}

function choiceOffersOf(scene: Scene, member: Member, said: ReadonlySet<string>): Offer[] {
  const { name, choices } = member;
  const offers =
    choices?.map(word => offer(word, helpOnChoice(name, word) ?? helpOnWord(name, word))) ?? namesOffered(scene, name);
  return offers.filter(({ label }) => !said.has(label));
}

function helpOnWord(name: string, word: string): WordHelp {
  return { line: `A word of ${name}`, text: `\`${word}\` of \`${name}\`.` };
}

/** The names of things that a quantity can be. */
function namesOffered({ text, project }: Scene, member: string): Offer[] {
  const kinds = KINDS_OF_MEMBER[member] ?? [];
  return kinds.flatMap(kind =>
    atHand(text, project, kind).map(({ declared }) =>
      offer(declared.name, thingHelp(declared, project) ?? { line: 'A name', text: '' })
    )
  );
}

function offer(word: string, { line, text }: WordHelp): Offer {
  return { label: word, kind: 'choice', parts: [word], help: { line, about: { text } } };
}

/** The quantity that is wanted behind the words of a statement. */
export function wantedAt(scene: Scene, block: BlockName, written: Written, next: Next): WantedQuantity | undefined {
  if (block === 'rule') return wantedInRule(scene, written, next);
  const found = wantedQuantity(next.path, [...written.kinds, block], scene.system);
  const wanted = found && block === 'price' ? wantedOfSale(scene, written, found) : found;
  if (wanted?.kind !== 'money' || wanted.usual === undefined) return wanted;
  return { ...wanted, usual: wanted.usual.replace(/\bUSD\b/, currencyOf(scene.project)) };
}

/** The quantity that a limit, or what a fix writes, wants in a rule. */
function wantedInRule(scene: Scene, { word, tokens, kinds }: Written, { path }: Next): WantedQuantity | undefined {
  const concern = concernHere(scene);
  if (concern === undefined) return undefined;
  const isLimit = path.some(each => each.startsWith('Limit.'));
  if (!isLimit && word !== 'fix') return wantedInSum(concern, tokens, path);
  const measure =
    word === 'fix' ? memberOf(concern, tokens[1]?.image ?? '')?.measure : comparedMeasure(concern, tokens);
  const usual = measure === undefined ? undefined : USUAL[measure];
  if (usual === undefined) return undefined;
  const [first, other] = scene.system === 'imperial' ? usual.values : [...usual.values].reverse();
  const isWithin = path.some(each => each === 'Limit.other' || each === 'Group.value');
  const hangsAlone = /^[-+*/]$/.test(kinds.at(-1) ?? '');
  const isWhole = isLimit && other !== undefined && !hangsAlone;
  const value = isWithin ? undefined : isWhole ? `${first!} (${other})` : first;
  return { property: path.at(-1)!, kind: usual.kind, large: false, ...(value === undefined ? {} : { usual: value }) };
}

/** `needs (damp-course - 150 mm)`: what is added or taken off is of the kind of what stands before it. */
function wantedInSum(concern: Concern, tokens: Written['tokens'], path: Next['path']): WantedQuantity | undefined {
  const measure = comparedMeasure(concern, tokens);
  const kind = path.includes('Test.subject') && measure !== undefined ? USUAL[measure]?.kind : undefined;
  return kind && { property: path.at(-1)!, kind, large: false };
}

const USUAL: Readonly<Record<string, { readonly kind: QuantityKind; readonly values: readonly string[] }>> = {
  m: { kind: 'm', values: ['4 in', '100 mm'] },
  'kg/m3': { kind: 'kg/m3', values: ['140 lb per cu ft', '2.2 t/m3'] },
  kg: { kind: 'kg', values: ['40 lb', '18 kg'] },
  m2: { kind: 'm2', values: ['200 sq ft', '20 m2'] },
  m3: { kind: 'm3', values: ['2 cu yd', '1.5 m3'] },
  '': { kind: 'number', values: ['5 %'] }
};
