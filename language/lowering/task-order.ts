import type { Key } from '../job/job.ts';
import { COMES_AFTER } from '../job/task-order.ts';
import { TASK_WORDS, type OwnTask, type TaskWord } from '../job/work.ts';
import type { JobTask } from '../syntax/generated/ast.ts';
import type { Context } from './context.ts';
import type { SpecText } from './names.ts';
import type { SaidFix } from './said-fix.ts';
import { takingOut } from './said-once.ts';

/** A task by its word, or one of one's own by its key. */
type Node = TaskWord | Key;

/** What comes after what: the order of the trade, and the tasks of one's own as they are read. */
export class TaskOrder {
  private readonly context: Context;
  private readonly text: SpecText;
  private readonly later = new Map<Node, Node[]>();
  private readonly titles = new Map<Node, string>();

  constructor(context: Context, text: SpecText) {
    this.context = context;
    this.text = text;
    for (const word of TASK_WORDS) for (const earlier of COMES_AFTER[word]) this.add(earlier, word);
  }

  /** Takes a task into the order; where it would wait for itself that is told, and it is left out. */
  takes(node: JobTask, { key, title, after, before, afterOwn, beforeOwn }: OwnTask): boolean {
    this.titles.set(key, title);
    const earlier: Node[] = [...after, ...afterOwn];
    const later: Node[] = [...before, ...beforeOwn];
    for (const each of earlier) this.add(each, key);
    for (const each of later) this.add(key, each);
    const round = this.wayRound(key);
    if (round === undefined) return true;
    for (const each of earlier) this.remove(each, key);
    for (const each of later) this.remove(key, each);
    const way = round.map((each, index) => {
      const next = this.named(round[index + 1] ?? key);
      return `${next} ${index === 0 ? 'comes ' : ''}after ${this.named(each)}`;
    });
    this.context.fault(
      this.text,
      key,
      node,
      'task-in-circle',
      `\`${title}\` would wait for itself: ${way.join(', ')}. Take out one of the tasks that it comes after or before.`,
      { property: 'title', fixes: this.fixes(node, round) }
    );
    return false;
  }

  /** Either end of the way round, where a clause says nothing else. */
  private fixes(node: JobTask, round: readonly Node[]): SaidFix[] {
    const ends = { before: round[1] ?? round[0]!, after: round.at(-1)! };
    return node.clauses.flatMap(clause => {
      const [wait, ...others] = clause.waits;
      if (clause.when === undefined || wait === undefined || others.length > 0) return [];
      const end = this.titles.get(ends[clause.when]) ?? ends[clause.when];
      if ((wait.title ?? wait.word) !== end) return [];
      const said = clause.$cstNode!.text;
      return [{ ...takingOut(this.context, this.text, clause), title: `Take out \`${said}\`` }];
    });
  }

  private add(earlier: Node, later: Node): void {
    this.later.set(earlier, [...(this.later.get(earlier) ?? []), later]);
  }

  private remove(earlier: Node, later: Node): void {
    this.later.set(
      earlier,
      this.later.get(earlier)!.filter(each => each !== later)
    );
  }

  /** The shortest way on from a task that leads back to it; itself first. */
  private wayRound(key: Node): Node[] | undefined {
    const ways: Node[][] = [[key]];
    const seen = new Set<Node>();
    for (const way of ways)
      for (const next of this.later.get(way.at(-1)!) ?? []) {
        if (next === key) return way;
        if (seen.has(next)) continue;
        seen.add(next);
        ways.push([...way, next]);
      }
    return undefined;
  }

  private named(node: Node): string {
    return this.titles.has(node) ? `\`${this.titles.get(node)!}\`` : node;
  }
}
