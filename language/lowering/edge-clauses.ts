import type { Height, Key, Edge, Material } from '../job/job.ts';
import type { WallHeights } from '../job/heights.ts';
import { SPIKES } from '../job/key-names.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { NOT_NEGATIVE, type Context } from './context.ts';
import type { Heights } from './heights.ts';
import type { SpecText } from './names.ts';
import { saidOnce, takingOut } from './said-once.ts';
import { isEdging, type Things } from './things.ts';

/** What is said of a side besides what it meets. */
export type EdgeSaid = Pick<Edge, 'flush' | 'edging' | 'edgingSet' | 'standing' | 'backed' | 'wall'>;

type Clauses = ReadonlyMap<string, ast.EdgeClause>;

/** The marks on a wall, by their words. */
const MARKS = {
  'damp-course': 'dampCourse',
  siding: 'siding',
  'weep-holes': 'weepHoles',
  footing: 'footing'
} as const satisfies Readonly<Record<NonNullable<ast.EdgeClause['what']>, keyof WallHeights>>;

/** What solid masonry is without. */
const NOT_OF_MASONRY = ['damp-course', 'siding', 'weep-holes'] as const;

/** Reads the clauses behind what a side meets: its edging, its last course, the wall that stands there. */
export class EdgeClauses {
  private readonly context: Context;
  private readonly things: Things;
  private readonly heights: Heights;

  constructor(context: Context, things: Things, heights: Heights) {
    this.context = context;
    this.things = things;
    this.heights = heights;
  }

  /** `at` is the key of the statement, under which its quantities stand. */
  read(text: SpecText, key: Key, at: Key, item: ast.EdgeItem): EdgeSaid {
    const said = saidOnce(this.context, text, key, item.clauses, wordOf);
    const edging = this.edging(text, key, said.get('edging'));
    const set = said.get('edging')?.set;
    const standing = this.standing(text, key, at, said);
    const wall = this.wall(text, key, at, said);
    return {
      flush: said.has('flush'),
      ...(edging === undefined ? {} : { edging }),
      ...(set === undefined ? {} : { edgingSet: set }),
      ...(standing === undefined ? {} : { standing }),
      ...(said.has('backed') ? { backed: true } : {}),
      ...(wall === undefined ? {} : { wall })
    };
  }

  private edging(text: SpecText, key: Key, clause: ast.EdgeClause | undefined): Material | undefined {
    if (clause === undefined) return undefined;
    const found = this.context.find(text, key, clause, 'edging', clause.edging?.$refText, ['material'], {
      among: () => this.things.fittingNames(text, 'edging')
    });
    const edging = found && this.things.material(found);
    if (edging === undefined || isEdging(edging)) return edging;
    const why = edging.key === SPIKES ? 'it goes with one on spikes' : `its role is ${edging.roles.join(', ')}`;
    return this.context.fault(
      text,
      key,
      clause,
      'wrong-role',
      `\`${edging.name}\` is no edging: ${why}.${this.things.fitting(text, 'edging')}`,
      { property: 'edging' }
    );
  }

  /** It is the edging that stands above the paving. */
  private standing(text: SpecText, key: Key, at: Key, said: Clauses): Edge['standing'] {
    const clause = said.get('standing');
    if (clause === undefined) return undefined;
    const up = this.context.given(text, `${at}/standing`, clause.up as Expression | undefined, 'm', NOT_NEGATIVE);
    if (said.has('edging')) return up;
    return this.context.fault(
      text,
      key,
      clause,
      'thing-incomplete',
      'Say which edging stands up here: `edging spiked-strip, standing 1 in up`.',
      { harmless: true, fixes: [takingOut(this.context, text, clause)] }
    );
  }

  private wall(text: SpecText, key: Key, at: Key, said: Clauses): WallHeights | undefined {
    const marks: Partial<Record<(typeof MARKS)[keyof typeof MARKS], Height>> = {};
    for (const [word, name] of Object.entries(MARKS)) {
      const clause = said.get(word);
      const height = clause && this.heights.read(text, `${at}/${word}`, clause.height);
      if (height !== undefined) marks[name] = height;
    }
    const solid = said.get('solid');
    const other = NOT_OF_MASONRY.find(word => said.has(word));
    if (solid !== undefined && other !== undefined) this.notSolid(text, key, solid, said.get(other)!, other);
    const isSolid = solid !== undefined && other === undefined;
    return isSolid || Object.keys(marks).length > 0 ? { ...marks, solid: isSolid } : undefined;
  }

  private notSolid(text: SpecText, key: Key, solid: ast.EdgeClause, other: ast.EdgeClause, word: string): void {
    this.context.fault(
      text,
      key,
      solid,
      'masonry-not-solid',
      `Solid masonry has no ${WORDS_OF_MARKS[word]!}: take one of the two out. The ${WORDS_OF_MARKS[word]!} counts.`,
      {
        harmless: true,
        related: [{ node: other, text, message: 'Said here.' }],
        fixes: [takingOut(this.context, text, solid)]
      }
    );
  }
}

const WORDS_OF_MARKS: Readonly<Record<string, string>> = {
  'damp-course': 'damp course',
  siding: 'siding',
  'weep-holes': 'weep holes'
};

function wordOf(clause: ast.EdgeClause): string {
  if (clause.flush) return 'flush';
  if (clause.backed) return 'backed';
  if (clause.solid) return 'solid';
  if (clause.up !== undefined) return 'standing';
  return clause.what ?? 'edging';
}
