/** Below this, in milliseconds, work needs no bar. */
const SOON = 1000;

const WIDTH = 30;

/** On a terminal, and only when work takes longer, a bar on standard error; nothing of it stays. */
export class Progress {
  private readonly total: number;
  private readonly start = performance.now();
  private shown = false;

  constructor(total: number) {
    this.total = total;
  }

  at(done: number): void {
    if (!process.stderr.isTTY || performance.now() - this.start < SOON) return;
    this.shown = true;
    const filled = Math.round((done / this.total) * WIDTH);
    process.stderr.write(`\r${'█'.repeat(filled)}${'░'.repeat(WIDTH - filled)} ${done} of ${this.total} files`);
  }

  end(): void {
    if (this.shown) process.stderr.write('\r\u001b[K');
  }
}
