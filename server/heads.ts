import { isProblem, type FoundRevision, type History, type Problem } from './history.ts';

type Head = FoundRevision | Problem;

/**
 * What stands at HEAD as seen from folders, as of the last look: git is started once for a folder and a look, and never
 * because somebody types.
 */
export class Heads {
  private readonly history: History;
  private readonly found = new Map<string, Head>();
  private readonly looks = new Map<string, Promise<Head>>();
  /** A look goes on, and was asked for once more meanwhile. */
  private isAskedAgain = false;
  private again: Promise<string[]> | undefined;

  constructor(history: History) {
    this.history = history;
  }

  /** Undefined before the first look has ended. */
  known(folder: string): Head | undefined {
    return this.found.get(folder);
  }

  knows(folder: string): boolean {
    return this.found.has(folder);
  }

  /** The first look; a folder that is known is not looked at again. */
  async first(folder: string): Promise<Head> {
    const known = this.found.get(folder) ?? this.looks.get(folder);
    if (known !== undefined) return known;
    const look = this.history.find(folder, 'HEAD');
    this.looks.set(folder, look);
    try {
      const head = await look;
      this.found.set(folder, head);
      return head;
    } finally {
      this.looks.delete(folder);
    }
  }

  /** Looks at all known folders again; the commits that HEAD has left. However often it is asked, one look goes on. */
  async lookAgain(): Promise<string[]> {
    this.isAskedAgain = true;
    this.again ??= this.lookAtAll().finally(() => (this.again = undefined));
    return this.again;
  }

  private async lookAtAll(): Promise<string[]> {
    const left: string[] = [];
    while (this.isAskedAgain) {
      this.isAskedAgain = false;
      for (const [folder, before] of this.found) {
        const now = await this.history.find(folder, 'HEAD');
        this.found.set(folder, now);
        const wasAt = isProblem(before) ? '' : before.commit;
        if (wasAt !== (isProblem(now) ? '' : now.commit)) left.push(wasAt);
      }
    }
    return left;
  }
}
