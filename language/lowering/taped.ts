import type { Point } from '../geometry/index.ts';
import type { Key, Tape } from '../job/job.ts';
import { printLength } from '../measures/print.ts';
import { pointsFromTapes, type PointsFromTapes, type TapeFault } from '../setting-out/tapes.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { type Context, POSITIVE } from './context.ts';
import { keyOf } from './keys.ts';
import type { Declared } from './names.ts';
import type { Points } from './points.ts';

interface ReadTape {
  readonly key: Key;
  readonly from: string;
  readonly to: string;
  readonly read: NonNullable<ReturnType<Context['given']>>;
  readonly declared: Declared;
  readonly node: ast.TapeClause;
}

/** Points found by tape, all of them together, since each tape counts as much as any other. */
export class Taped {
  private readonly context: Context;
  private readonly points: Points;
  private readonly declared: readonly Declared[];
  private fit: { readonly fit: PointsFromTapes; readonly tapes: readonly ReadTape[] } | undefined;
  private isFitting = false;

  /** `declared`: the points that a job can see. */
  constructor(context: Context, points: Points, declared: readonly Declared[]) {
    this.context = context;
    this.points = points;
    this.declared = declared.filter(({ node }) => (node as ast.Mark).clauses.length > 0);
  }

  point(found: Declared): Point | undefined {
    if (this.isFitting)
      return this.context.fault(
        found.text,
        keyOf(found),
        found.node,
        'let-in-circle',
        `A tape of ${found.name} is taken from a point that itself hangs from points found by tape. Measure from a point with coordinates.`,
        { property: 'name' }
      );
    const { fit } = this.fitted();
    const at = fit.points.find(({ key }) => key === found.name);
    if (at === undefined) this.context.breaks(found.name);
    return at && { x: at.x, y: at.y };
  }

  /** Each tape as read and as fitted. */
  tapes(): Tape[] {
    if (this.declared.length === 0) return [];
    const { fit, tapes } = this.fitted();
    return fit.tapes.flatMap(({ key, from, to, fitted, misfit, byTheOthers }) => {
      const tape = tapes.find(one => one.key === key);
      if (tape === undefined) return [];
      const worst = fit.worst.includes(key);
      return [
        { key, from, to, read: tape.read, fitted, misfit, worst, ...(byTheOthers === undefined ? {} : { byTheOthers }) }
      ];
    });
  }

  private fitted(): { readonly fit: PointsFromTapes; readonly tapes: readonly ReadTape[] } {
    if (this.fit !== undefined) return this.fit;
    this.isFitting = true;
    const { value } = this.context.watch(() => this.fitAll());
    this.isFitting = false;
    this.fit = value;
    return value;
  }

  private fitAll(): { readonly fit: PointsFromTapes; readonly tapes: readonly ReadTape[] } {
    // By name, not by where the text has them: sums in another order end in other digits.
    const free = this.declared
      .filter(({ text, node }) => !this.context.isBroken(text, node))
      .sort((one, other) => (one.name < other.name ? -1 : 1));
    const names = new Set(free.map(({ name }) => name));
    const fixed = new Map<string, Point>();
    const tapes: ReadTape[] = [];
    const sides = new Map<string, { from: string; to: string; left: boolean }>();
    /** A point that tapes or sides are told by; fixed unless it is found by tape as well. */
    const known = (
      one: Declared,
      node: ast.TapeClause | ast.PointLine,
      property: 'from' | 'to'
    ): string | undefined => {
      const name = (node as ast.PointLine)[property]?.$refText;
      if (name !== undefined && names.has(name)) {
        this.context.find(one.text, keyOf(one), node, property, name, ['point']);
        return name;
      }
      const at = this.points.named(one.text, keyOf(one), node, property, name);
      if (at === undefined || name === undefined) return undefined;
      fixed.set(name, at);
      return name;
    };
    for (const one of free) {
      (one.node as ast.Mark).clauses.forEach((clause, index) => {
        if (clause.line !== undefined) {
          const from = known(one, clause.line, 'from');
          const to = known(one, clause.line, 'to');
          if (from !== undefined && to !== undefined) sides.set(one.name, { from, to, left: clause.side === 'left' });
          return;
        }
        const key = `${keyOf(one)}/tape-${index + 1}`;
        const from = known(one, clause, 'from');
        const read = this.context.given(one.text, key, clause.read as Expression | undefined, 'm', POSITIVE);
        if (from !== undefined && read !== undefined)
          tapes.push({ key, from, to: one.name, read, declared: one, node: clause });
      });
    }
    const fit = pointsFromTapes({
      fixed: [...fixed].map(([key, { x, y }]) => ({ key, x, y })),
      free: free.map(({ name }) => {
        const side = sides.get(name);
        return { key: name, ...(side === undefined ? {} : { side }) };
      }),
      tapes: tapes.map(({ key, from, to, read }) => ({ key, from, to, read: read.value }))
    });
    for (const fault of fit.faults) this.tell(fault, free, tapes);
    return { fit, tapes };
  }

  private tell(fault: TapeFault, free: readonly Declared[], tapes: readonly ReadTape[]): void {
    const point = 'points' in fault ? fault.points[0] : fault.point;
    const found = free.find(({ name }) => name === point);
    if (found === undefined) return;
    const { text, node } = found;
    this.context.fault(text, keyOf(found), node, FAULT_OF[fault.kind], this.message(fault, tapes), {
      property: 'name'
    });
  }

  private message(fault: TapeFault, tapes: readonly ReadTape[]): string {
    const print = (length: number): string => printLength(length, this.context.system);
    const fromOf = (key: string): string => tapes.find(tape => tape.key === key)?.from ?? '';
    switch (fault.kind) {
      case 'tape-from-itself':
        return `A tape of ${fault.point} is taken from ${fault.point} itself. Name the point it was taken from.`;
      case 'too-few-tapes':
        return `${fault.point} needs tapes from two points; it has ${fault.has === 1 ? 'one' : 'none'}. Add one: \`${this.context.system === 'imperial' ? 'taped 12 ft 6 in from A, 14 ft from B' : 'taped 3.20 m from A, 4.10 m from B'}\`.`;
      case 'others-not-found':
        return `${fault.point} is taped from ${fault.others.join(' and ')}, which ${fault.others.length === 1 ? 'has' : 'have'} no place.`;
      case 'too-many-together':
        return `${fault.points.length} points and ${fault.tapes} tapes hang together here: more than are fitted at once. Give some of the points coordinates.`;
      case 'triangle-does-not-close': {
        const [first, second] = fault.tapes.map(fromOf);
        return `The tapes from ${first!} and ${second!} to ${fault.point} can't meet: they miss each other by ${print(fault.missesBy)}. Measure both again.`;
      }
      case 'wrong-side':
        return `The tapes put ${fault.point} on the other side of the line than is said. Swap \`left\` and \`right\`, or measure again.`;
      case 'no-fit':
        return `The tapes to ${fault.points.join(', ')} contradict each other too much to be fitted. Measure them again.`;
      case 'not-fixed-in-place':
        return `${fault.points.join(', ')} could still move together: one more tape from a point with coordinates is needed.`;
      default:
        return `Two places fit the tapes to ${fault.point}. Say which: \`left of A to B\`, or \`right of\` it.`;
    }
  }
}

const FAULT_OF: Readonly<Record<TapeFault['kind'], string>> = {
  'tape-from-itself': 'tapes-too-few',
  'too-few-tapes': 'tapes-too-few',
  'others-not-found': 'tapes-too-few',
  'too-many-together': 'too-many-tapes',
  'triangle-does-not-close': 'tapes-do-not-meet',
  'wrong-side': 'side-of-line-wrong',
  'no-fit': 'tapes-do-not-meet',
  'side-not-said': 'side-not-said',
  'side-does-not-tell': 'side-not-said',
  'not-fixed-in-place': 'tapes-too-few'
};
