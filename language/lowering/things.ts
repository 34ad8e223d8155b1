import type { AstNode } from 'langium';
import type { TextChange } from '../findings/finding.ts';
import type { Assumed, Bond, Country, Given, Key, Material, Role, Soil, Unit } from '../job/job.ts';
import { SPIKES } from '../job/key-names.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { readAllowances } from './allowances.ts';
import { assumed, writtenOf, NOT_NEGATIVE, POSITIVE, type Context, type Limits, type Wanted } from './context.ts';
import { readBond } from './bonds.ts';
import { readCount } from './counts.ts';
import type { Declared, SpecText } from './names.ts';
import { spanOf } from './text-changes.ts';
import { writing, type SaidFix } from './said-fix.ts';
import { saidAgain, saidOnce, takingOut } from './said-once.ts';

/** Reads the things that areas are made of, each once. */
export class Things {
  private readonly context: Context;
  private readonly shipped: SpecText;
  private readonly units = new Map<AstNode, Unit | undefined>();
  private readonly materials = new Map<AstNode, Material | undefined>();
  private readonly bonds = new Map<AstNode, Bond | undefined>();
  private readonly standards = new Map<string, Material | undefined>();

  constructor(context: Context, shipped: SpecText) {
    this.context = context;
    this.shipped = shipped;
  }

  // ---- units ----

  unit(declared: Declared): Unit | undefined {
    if (!this.units.has(declared.node))
      this.units.set(declared.node, this.readUnit(declared.text, declared.node as ast.Unit));
    return this.orBroken(declared, this.units.get(declared.node));
  }

  private orBroken<T>(declared: Declared, thing: T | undefined): T | undefined {
    if (thing === undefined) this.context.breaks(declared.name);
    return thing;
  }

  private readUnit(text: SpecText, node: ast.Unit): Unit | undefined {
    const { context } = this;
    const key = `unit:${node.name}`;
    const said = saidOnce(context, text, key, node.items, item => item.$type);
    const size = said.get('SizeItem') as ast.SizeItem | undefined;
    if (size === undefined)
      return context.incomplete(
        text,
        key,
        node,
        `The unit ${node.name} has no size. Write \`size 200 x 100 x 60 mm\`: length, width, thickness.`
      );
    const [length, width, thickness] = this.size(text, key, size.size, 3, ['length', 'width', 'thickness']) ?? [];
    const made = said.get('MadeOf') as ast.MadeOf | undefined;
    const madeOf =
      made === undefined ? 'concrete' : context.word(text, key, made, 'what', made.what, ['concrete', 'clay'] as const);
    const weight = said.get('Weight') as ast.Weight | undefined;
    const mass = weight && context.given(text, `${key}/weight`, weight.value as Expression, 'kg');
    const shapeItem = said.get('UnitShape') as ast.UnitShape | undefined;
    const shape =
      shapeItem === undefined
        ? 'rectangle'
        : context.word(text, key, shapeItem, 'word', shapeItem.word, ['rectangle', 'hexagon'] as const);
    const colour = (said.get('Colour') as ast.Colour | undefined)?.word;
    if (length === undefined || width === undefined || thickness === undefined || madeOf === undefined)
      return undefined;
    if (shape === undefined || (shape === 'hexagon' && !this.isHexagon(text, key, size, length, width)))
      return undefined;
    if (weight !== undefined && mass === undefined) return undefined;
    const packItem = said.get('PackSize') as ast.PackSize | undefined;
    const pack = packItem && readCount(context, text, `${key}/pack`, packItem.count as Expression, 'pack 430');
    if (packItem !== undefined && pack === undefined) return undefined;
    return {
      key,
      name: node.name,
      madeOf,
      length,
      width,
      thickness,
      ...(mass === undefined ? {} : { weight: mass }),
      ...(colour === undefined ? {} : { colour }),
      shape,
      finishedEdge: said.has('FinishedEdge'),
      ...(said.has('SetByHand') ? { setByHand: true } : {}),
      ...(pack === undefined ? {} : { pack })
    };
  }

  /** A regular hexagon is 1.155 times as long across its corners as across its flats. */
  private isHexagon(text: SpecText, key: Key, node: ast.SizeItem, corners: Given, flats: Given): boolean {
    const across = corners.value / flats.value;
    if (Math.abs(across / HEXAGON - 1) <= HEXAGON_TOLERANCE) return true;
    this.context.fault(
      text,
      key,
      node,
      'out-of-range',
      `A hexagon's size is across its corners, across its flats, thickness: ${corners.written} across the corners is ${across.toFixed(2)} times ${flats.written} across the flats, and a regular one is ${HEXAGON.toFixed(3)} times.`
    );
    return false;
  }

  /** Sizes as `a x b x c in`: the measure at the end counts for those before it. Undefined when a fault was told. */
  size(
    text: SpecText,
    key: Key,
    node: ast.Size | undefined,
    count: number,
    names: readonly string[],
    limits: Limits = POSITIVE
  ): Given[] | undefined {
    if (node === undefined) return undefined;
    if (node.sides.length !== count)
      return this.context.fault(
        text,
        key,
        node,
        'wrong-kind',
        `\`${writtenOf(node)}\` has ${node.sides.length} sizes; here stand ${count}: ${names.join(' x ')}.`
      );
    const last = node.sides.at(-1) as Expression;
    const list = { measure: lastMeasure(last), node: ast.isQuantity(last) ? node : undefined };
    const sides = node.sides.map((side, index) =>
      this.context.given(text, `${key}/${names[index]!}`, side as Expression, 'm', limits, list)
    );
    return sides.some(side => side === undefined) ? undefined : (sides as Given[]);
  }

  // ---- materials ----

  material(declared: Declared): Material | undefined {
    if (!this.materials.has(declared.node))
      this.materials.set(declared.node, this.readMaterial(declared.text, declared.node as ast.Material));
    return this.orBroken(declared, this.materials.get(declared.node));
  }

  /** Names what would fit a role, for a message. */
  fitting(text: SpecText, role: Role): string {
    const fits = this.fittingNames(text, role);
    return fits.length === 0 ? '' : ` These can: ${fits.join(', ')}.`;
  }

  fittingNames(text: SpecText, role: Role): string[] {
    return this.context.names.known(text, ['material']).filter(name => this.fits(text, name, role));
  }

  /** Offers what would fit a role, and, for a material of one's own, that it may have this role too. */
  roleFixes(text: SpecText, material: Declared, role: Role): SaidFix[] {
    const { changes } = this.context;
    const roles = (material.node as ast.Material).items.find(ast.isRoleItem);
    const own =
      material.text === this.shipped || !roles?.roles.some(isGrain) || !isGrain(role)
        ? []
        : [
            {
              title: `Give \`${material.name}\` the role \`${role}\` too`,
              does: [changes.behind(material.text, roles, `, ${role}`)]
            }
          ];
    const fitting = this.fittingNames(text, role).slice(0, MOST_FITTING);
    return [...own, ...fitting.map(writing)];
  }

  private fits(text: SpecText, name: string, role: Role): boolean {
    const declared = this.context.names.peek(text, 'material', name);
    const material = declared && this.context.watch(() => this.material(declared)).value;
    if (material === undefined) return false;
    return role === 'edging' ? isEdging(material) : material.roles.includes(role);
  }

  /** The shipped material of a role, for a job that names none. */
  standard(role: Role, country: Country | undefined, openGraded = false): Material | undefined {
    const asked = `${role} ${country ?? ''} ${openGraded}`;
    if (!this.standards.has(asked)) this.standards.set(asked, this.readStandard(role, country, openGraded));
    return this.standards.get(asked);
  }

  private readStandard(role: Role, country: Country | undefined, openGraded: boolean): Material | undefined {
    const all = this.shipped.parsed.root.elements.filter(ast.isMaterial);
    const fitting = all
      .map(node => ({ node, material: this.material({ kind: 'material', name: node.name, node, text: this.shipped }) }))
      .filter(({ material }) => material?.roles.includes(role) && material.openGraded === openGraded)
      .map(({ material }) => material!);
    const wanted = STANDARD_NAMES[country ?? 'north-america'][role];
    const found = fitting.find(material => material.name === wanted) ?? fitting[0];
    return (
      found &&
      asAssumed(found, {
        because: `the job names no material for the ${ROLE_WORDS[role]}; ${found.name} as shipped is taken`
      })
    );
  }

  private readMaterial(text: SpecText, node: ast.Material): Material | undefined {
    const { context } = this;
    const key = `material:${node.name}`;
    const said = saidOnce(context, text, key, node.items, item =>
      item.$type === 'MeasureItem' ? (item.what ?? '') : item.$type
    );
    const roles = this.roles(text, key, node, said.get('RoleItem') as ast.RoleItem | undefined);
    const grading = said.get('Grading') as ast.Grading | undefined;
    const graded =
      grading === undefined
        ? 'dense'
        : context.word(text, key, grading, 'word', grading.word, ['dense', 'open', 'grit'] as const);
    const source = (said.get('AccordingTo') as ast.AccordingTo | undefined)?.text;
    let sound = roles !== undefined && graded !== undefined;
    const measure = (what: string, wanted: Wanted, limits: Limits = POSITIVE): Given | undefined => {
      const item = said.get(what) as ast.MeasureItem | undefined;
      if (item === undefined) return undefined;
      const given = context.given(text, `${key}/${what}`, item.value as Expression, wanted, limits);
      if (given === undefined) sound = false;
      return given;
    };
    const sizes = (type: string, count: number, names: readonly string[]): Given[] | undefined => {
      const item = said.get(type) as { size?: ast.Size } | undefined;
      if (item === undefined) return undefined;
      const given = this.size(text, `${key}/${type.toLowerCase()}`, item.size, count, names, NOT_NEGATIVE);
      if (given === undefined) sound = false;
      return given;
    };
    const size = sizes('SizeItem', 3, ['length', 'width', 'height']);
    const concreteSize = sizes('Concrete', 2, ['width', 'depth']);
    const concreteItem = said.get('Concrete') as ast.Concrete | undefined;
    const haunch = sizes('Haunch', 2, ['width', 'height']);
    const roll = sizes('Roll', 2, ['width', 'length']);
    const spikes = said.get('Spikes') as ast.Spikes | undefined;
    const spikesEvery = spikes && context.given(text, `${key}/spikes`, spikes.spacing as Expression, 'm');
    if (spikes !== undefined && spikesEvery === undefined) sound = false;
    let under: Given | undefined = NONE_UNDER;
    if (concreteItem?.under !== undefined) {
      under = context.given(text, `${key}/concrete/under`, concreteItem.under as Expression, 'm', NOT_NEGATIVE);
      if (under === undefined) sound = false;
    }
    const compacted = measure('compacted', 'kg/m3');
    const loose = measure('loose', 'kg/m3');
    const compactionFactor = measure('compaction-factor', '');
    const basePast = measure('base-past', 'm', NOT_NEGATIVE);
    const width = measure('width', 'm', NOT_NEGATIVE) ?? size?.[1];
    const lap = measure('lap', 'm', NOT_NEGATIVE);
    const curvePieces = measure('curve-pieces', 'm');
    const pause = said.get('CurePause') as ast.CurePause | undefined;
    const allowances = readAllowances(context, text, key, roles ?? [], said);
    if (allowances === undefined) sound = false;
    const wait = pause && context.given(text, `${key}/wait`, pause.pause as Expression | undefined, 's', NOT_NEGATIVE);
    if (pause !== undefined && wait === undefined) sound = false;
    if (!sound || roles === undefined) return undefined;
    if (concreteSize !== undefined && under !== undefined && under.value > concreteSize[0]!.value)
      return context.fault(
        text,
        key,
        concreteItem!,
        'out-of-range',
        `More of the concrete lies under the paving (${under.written}) than it is wide (${concreteSize[0]!.written}).`
      );
    if (roll !== undefined && lap !== undefined && lap.value >= roll[0]!.value)
      return context.fault(
        text,
        key,
        said.get('lap')!,
        'out-of-range',
        `A lap of ${lap.written} takes up the whole roll (${roll[0]!.written} wide).`
      );
    const isEdging = roles.includes('edging');
    const isConcrete = roles.includes('concrete');
    if (!isEdging) this.onlyOfEdging(text, key, roles, [isConcrete ? undefined : pause, said.get('curve-pieces')]);
    const material: Material = {
      key,
      name: node.name,
      roles,
      openGraded: graded !== 'dense',
      ...given({ compacted, loose, compactionFactor, width, spikesEvery, basePast, lap }),
      ...(isEdging ? given({ curvePieces, length: size?.[0], height: size?.[2] }) : {}),
      ...(isEdging || isConcrete ? given({ wait }) : {}),
      ...(concreteSize === undefined
        ? {}
        : { concrete: { width: concreteSize[0]!, depth: concreteSize[1]!, under: under! } }),
      ...(haunch === undefined ? {} : { haunch: { width: haunch[0]!, height: haunch[1]! } }),
      ...(roll === undefined ? {} : { roll: { width: roll[0]!, length: roll[1]! } }),
      ...(allowances === undefined || Object.keys(allowances).length === 0 ? {} : { allowances }),
      ...this.setting(text, key, roles, said.get('RoleItem') as ast.RoleItem)
    };
    if (!this.densitiesAgree(text, node, material)) return undefined;
    return text === this.shipped ? asShipped(material, source) : this.completed(material);
  }

  /** Pieces for curves, and concrete that must set: nothing else has them. */
  private onlyOfEdging(
    text: SpecText,
    key: Key,
    roles: readonly Role[],
    items: readonly (ast.MaterialItem | undefined)[]
  ): void {
    for (const item of items) {
      if (item === undefined) continue;
      this.context.fault(
        text,
        key,
        item,
        'wrong-role',
        `Only edging ${ast.isCurePause(item) ? 'and concrete are waited for before anything is compacted against them' : 'has pieces for curves'}; the role of this is ${roles.join(', ')}. Take this out.`,
        { harmless: true, fixes: [takingOut(this.context, text, item)] }
      );
    }
  }

  /** Whether a joint filler stays loose. */
  private setting(text: SpecText, key: Key, roles: readonly Role[], item: ast.RoleItem): { unbound?: boolean } {
    const said = item.roles.filter(word => word === 'unbound' || word === 'bound');
    const [word] = said;
    if (word === undefined) return {};
    const fault = (message: string): void =>
      this.context.fault(text, key, item, 'wrong-role', message, {
        harmless: true,
        property: ['roles', item.roles.lastIndexOf(said.at(-1)!)]
      });
    if (!roles.includes('joint-filler')) {
      fault(`\`${word}\` tells how a joint filler sets; the role of this is ${roles.join(', ')}. Take it out.`);
      return {};
    }
    if (said.includes('bound') && said.includes('unbound'))
      fault('A joint filler sets hard or stays loose: write `bound` or `unbound`, not both. The first counts.');
    return { unbound: word === 'unbound' };
  }

  private roles(text: SpecText, key: Key, node: ast.Material, item: ast.RoleItem | undefined): Role[] | undefined {
    if (item === undefined)
      return this.context.incomplete(
        text,
        key,
        node,
        `The material ${node.name} has no role. Write \`role\` and what it is for: ${ROLES.join(', ')}.`,
        this.sayings(
          text,
          key,
          node,
          undefined,
          this.likelyRoles(node).map(role => `role ${role}`)
        )
      );
    saidAgain(this.context, text, key, item, 'roles', item.roles);
    // `unbound` and `bound` tell how a joint filler sets.
    const words = item.roles.map((word, index) =>
      this.context.word(text, key, item, ['roles', index], word, [...ROLES, 'unbound', 'bound'] as const)
    );
    if (words.some(word => word === undefined)) return undefined;
    return words.filter((word): word is Role => (ROLES as readonly (string | undefined)[]).includes(word));
  }

  /** Loose stone is lighter than compacted stone, and all three of densities and factor must tell the same. */
  private densitiesAgree(text: SpecText, node: ast.Material, material: Material): boolean {
    const { compacted, loose, compactionFactor } = material;
    const said = (what: string): AstNode =>
      node.items.find(item => item.$type === 'MeasureItem' && item.what === what) ?? node;
    if (compacted && loose && loose.value > compacted.value) {
      this.context.fault(
        text,
        material.key,
        said('loose'),
        'densities-disagree',
        `Loose ${material.name} (${loose.written}) can't be heavier than compacted (${compacted.written}).`,
        { fixes: [{ title: 'Swap the two', does: this.swapped(text, said('compacted'), said('loose')) }] }
      );
      return false;
    }
    if (compactionFactor && compactionFactor.value < 1) {
      this.context.fault(
        text,
        material.key,
        said('compaction-factor'),
        'densities-disagree',
        `A compaction factor of ${compactionFactor.written} can't be: loose ${material.name} takes more room than compacted, so it is 1 or more.`,
        { fixes: this.factorFixes(text, said('compaction-factor'), 1 / compactionFactor.value) }
      );
      return false;
    }
    if (compacted && loose && compactionFactor) {
      const ratio = compacted.value / loose.value;
      if (Math.abs(ratio / compactionFactor.value - 1) > DENSITY_TOLERANCE) {
        this.context.fault(
          text,
          material.key,
          said('compaction-factor'),
          'densities-disagree',
          `Of ${material.name}, ${compacted.written} compacted and ${loose.written} loose make a factor of ${ratio.toFixed(2)}, not ${compactionFactor.written}. Correct one of the three or leave one out.`,
          { fixes: this.factorFixes(text, said('compaction-factor'), ratio) }
        );
        return false;
      }
    }
    return true;
  }

  /** What a material without a role is for: what areas take it for, else what it looks like. */
  private likelyRoles(node: ast.Material): Role[] {
    const items = this.context.names.areas().flatMap(area => (area.node as ast.Area).items);
    const roles = new Set(items.flatMap(item => rolesIn(item, node.name)));
    return roles.size > 0 ? [...roles] : rolesByLook(node);
  }

  private swapped(text: SpecText, one: AstNode, other: AstNode): TextChange[] {
    const { changes } = this.context;
    const words = (node: AstNode): string => {
      const { start, end } = spanOf(node, 'value');
      return text.parsed.text.slice(start, end);
    };
    return [changes.over(text, one, words(other), 'value'), changes.over(text, other, words(one), 'value')];
  }

  /** The factor that fits, or none: it follows from the densities then, or from what ships. */
  private factorFixes(text: SpecText, node: AstNode, factor: number): SaidFix[] {
    const { changes } = this.context;
    const written = factor.toFixed(2);
    return [
      { ...writing(written), does: [changes.over(text, node, written, 'value')] },
      takingOut(this.context, text, node)
    ];
  }

  /** What a material of one's own leaves out is taken from the shipped one of its name or role, as assumed. */
  private completed(material: Material): Material {
    const needsDensity = material.roles.some(role => WITH_DENSITY.includes(role) || role === 'concrete');
    if (
      !needsDensity ||
      (material.compacted && (material.loose ?? material.compactionFactor)) ||
      (material.loose && material.compactionFactor)
    )
      return material;
    const shipped = this.shippedLike(material);
    if (shipped === undefined) return material;
    const because: Assumed = {
      because: `${material.name} does not say; taken from ${shipped.name} as shipped`,
      ...sourceOf(shipped)
    };
    const take = (theirs: Given | undefined): Given | undefined => theirs && assumed(theirs, because);
    if (material.compacted || material.loose) {
      // One density is known: the other follows from the factor of the shipped one.
      const factor =
        material.compactionFactor ??
        (shipped.compacted &&
          shipped.loose && {
            value: shipped.compacted.value / shipped.loose.value,
            written: (shipped.compacted.value / shipped.loose.value).toFixed(2),
            assumed: because
          });
      return { ...material, ...given({ compactionFactor: factor }) };
    }
    const loose = material.compactionFactor === undefined ? shipped.loose : undefined;
    return { ...material, ...given({ compacted: take(shipped.compacted), loose: take(loose) }) };
  }

  private shippedLike(material: Material): Material | undefined {
    const all = this.shipped.parsed.root.elements
      .filter(ast.isMaterial)
      .map(node => this.material({ kind: 'material', name: node.name, node, text: this.shipped }));
    const same = (other: Material | undefined): boolean =>
      other !== undefined &&
      other.openGraded === material.openGraded &&
      other.roles.some(role => material.roles.includes(role));
    return all.find(other => same(other) && other!.name === material.name) ?? all.find(same);
  }

  /** Offers statements that a declaration leaves out, behind one that it has or at its start. */
  sayings(
    text: SpecText,
    key: Key,
    node: AstNode & { readonly items: readonly AstNode[] },
    behind: AstNode | undefined,
    statements: readonly string[]
  ): SaidFix[] {
    const { changes } = this.context;
    changes.gap(`${key}/unsaid`, text, node, behind, { commas: true });
    return statements.map(statement => ({ ...writing(statement), does: changes.said(`${key}/unsaid`, [statement]) }));
  }

  // ---- soils and bonds ----

  /** As shipped for common earth. */
  private usualOfSoil(what: string): string {
    if (what === 'swell') return '25 %';
    return this.context.system === 'imperial' ? '100 lb per cu ft' : '1.6 t/m3';
  }

  soil(declared: Declared, why?: Assumed): { readonly soil: Soil; readonly drainsWell: boolean } | undefined {
    const { context } = this;
    const { text } = declared;
    const node = declared.node as ast.SoilKind;
    const key = `soil-kind:${node.name}`;
    const said = saidOnce(context, text, key, node.items, item => ('what' in item ? (item.what ?? '') : item.$type));
    const source = (said.get('AccordingTo') as ast.AccordingTo | undefined)?.text;
    const measure = (what: string, wanted: Wanted): Given | undefined => {
      const item = said.get(what) as ast.SoilMeasure | undefined;
      if (item === undefined)
        return context.incomplete(
          text,
          key,
          node,
          `The soil ${node.name} has no ${what}. Write \`${what} ${what === 'swell' ? '25 %' : '100 lb per cu ft'}\`.`,
          this.sayings(text, key, node, node.items.at(-1), [`${what} ${this.usualOfSoil(what)}`])
        );
      const given = context.given(
        text,
        `${key}/${what}`,
        item.value as Expression,
        wanted,
        what === 'swell' ? NOT_NEGATIVE : POSITIVE
      );
      if (given === undefined || text !== this.shipped) return given;
      return assumed(given, {
        because: why?.because ?? `as shipped for ${node.name}`,
        ...(source === undefined ? {} : { source })
      });
    };
    const swell = measure('swell', '');
    const density = measure('density', 'kg/m3');
    const drainsItem = said.get('drains') as ast.SoilWord | undefined;
    const drains =
      drainsItem && context.word(text, key, drainsItem, 'word', drainsItem.word, ['well', 'poorly'] as const);
    const heaveItem = said.get('frost-heave') as ast.SoilWord | undefined;
    const heave =
      heaveItem && context.word(text, key, heaveItem, 'word', heaveItem.word, ['likely', 'unlikely'] as const);
    if (swell === undefined || density === undefined) return undefined;
    const soil: Soil = {
      name: node.name,
      ...(why === undefined ? {} : { assumed: why }),
      swell,
      density,
      heavesInFrost: heave !== 'unlikely'
    };
    return { soil, drainsWell: drains === 'well' };
  }

  bond(declared: Declared): Bond | undefined {
    if (!this.bonds.has(declared.node)) this.bonds.set(declared.node, readBond(this.context, this, declared));
    return this.orBroken(declared, this.bonds.get(declared.node));
  }
}

/** `12 ft 6 in` ends in `in`. */
export function lastMeasure(node: Expression): string | undefined {
  if (ast.isQuantity(node)) return node.parts.at(-1)?.measure;
  if (ast.isSum(node)) return lastMeasure(node.right as Expression);
  return ast.isGroup(node) ? node.measure : undefined;
}

function given<T extends Record<string, Given | undefined>>(all: T): { [K in keyof T]?: Given } {
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Given;
  };
}

/** Every quantity of a shipped material is assumed, with its source. */
function asShipped(material: Material, source: string | undefined): Material {
  const because: Assumed = { because: `as shipped for ${material.name}`, ...(source === undefined ? {} : { source }) };
  const marked = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    if ('written' in value && 'value' in value) return { assumed: because, ...value };
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, marked(part)]));
  };
  return marked(material) as Material;
}

function asAssumed(material: Material, because: Assumed): Material {
  return { ...material, assumed: because };
}

function sourceOf(material: Material): { source?: string } {
  const source = material.compacted?.assumed?.source;
  return source === undefined ? {} : { source };
}

/** Across the corners to across the flats. */
const HEXAGON = 2 / Math.sqrt(3);

/** As measured with a tape. */
const HEXAGON_TOLERANCE = 0.02;

const ROLES = [
  'base',
  'sub-base',
  'bed',
  'joint-filler',
  'edging',
  'fixing',
  'geotextile',
  'concrete'
] as const satisfies readonly Role[];

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  base: 'base',
  'sub-base': 'sub-base',
  bed: 'bed',
  'joint-filler': 'joints',
  edging: 'edging',
  fixing: 'fixing',
  geotextile: 'geotextile',
  concrete: 'concrete'
};

const WITH_DENSITY: readonly Role[] = ['base', 'sub-base', 'bed', 'joint-filler'];

const EUROPEAN: Readonly<Partial<Record<Role, string>>> = {
  bed: 'sharp-sand',
  'joint-filler': 'kiln-dried-sand',
  geotextile: 'separation-cloth'
};

/** Which shipped material stands in where a job names none. */
export const STANDARD_NAMES: Readonly<Record<Country, Readonly<Partial<Record<Role, string>>>>> = {
  'north-america': {
    base: 'crushed-stone',
    'sub-base': 'crushed-stone',
    bed: 'washed-sand',
    'joint-filler': 'joint-sand',
    geotextile: 'separation-cloth'
  },
  britain: { base: 'type-1', 'sub-base': 'type-1', ...EUROPEAN },
  ireland: { base: 'clause-804', 'sub-base': 'clause-804', ...EUROPEAN },
  'continental-europe': { base: 'stone-0-32', 'sub-base': 'stone-0-32', ...EUROPEAN }
};

export function isCountry(name: string | undefined): name is Country {
  return name !== undefined && Object.hasOwn(STANDARD_NAMES, name);
}

/** Stone and sand may serve in several places. */
function isGrain(role: string): boolean {
  return (WITH_DENSITY as readonly string[]).includes(role);
}

/** Of a longer list of materials the message tells. */
const MOST_FITTING = 4;

/** The roles in which a statement of an area names a material. */
function rolesIn(item: ast.AreaItem, name: string): Role[] {
  const isIt = (reference: { readonly $refText: string } | undefined): boolean => reference?.$refText === name;
  if (ast.isLayer(item)) return isIt(item.material) ? [item.role] : [];
  if (ast.isJointFill(item)) return isIt(item.material) ? ['joint-filler'] : [];
  if (ast.isGeotextile(item)) return isIt(item.material) ? ['geotextile'] : [];
  if (!ast.isEdges(item)) return [];
  return item.items.some(({ clauses }) => clauses.some(({ edging }) => isIt(edging))) ? ['edging'] : [];
}

function rolesByLook({ items }: ast.Material): Role[] {
  const says = (types: readonly string[]): boolean => items.some(item => types.includes(item.$type));
  if (says(['Roll'])) return ['geotextile'];
  if (says(['Spikes', 'Concrete', 'Haunch', 'SizeItem'])) return ['edging'];
  return ['base', 'bed', 'joint-filler'];
}

/** Whether a side can be edged with it: what goes with an edging alone is none. */
export function isEdging({ key, roles }: Pick<Material, 'key' | 'roles'>): boolean {
  return roles.includes('edging') && key !== SPIKES;
}

/** Stated densities are rounded: within two parts in a hundred they tell the same. */
const DENSITY_TOLERANCE = 0.02;

const NONE_UNDER: Given = {
  value: 0,
  written: '0',
  assumed: { because: 'no part of the concrete is said to lie under the paving' }
};
