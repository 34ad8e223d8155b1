import { createInterface } from 'node:readline';

/** Lines typed in a terminal, or piped in. What asks for them goes to standard error: standard output is for results. */
export class TypedLines {
  private readonly reader = createInterface({
    input: process.stdin,
    output: process.stderr,
    terminal: process.stdin.isTTY && process.stderr.isTTY
  });
  private readonly lines = this.reader[Symbol.asyncIterator]();
  private readonly end = (): void => this.reader.close();

  constructor() {
    // Ctrl+C comes from a terminal that edits lines, or as a signal.
    this.reader.on('SIGINT', this.end);
    process.on('SIGINT', this.end);
  }

  /** The next line; undefined when there are no more, or Ctrl+C was pressed. */
  async next(prompt: string): Promise<string | undefined> {
    this.reader.setPrompt(prompt);
    this.reader.prompt();
    const { done, value } = await this.lines.next();
    if (!done) return value;
    this.say('');
    return undefined;
  }

  say(text: string): void {
    process.stderr.write(`${text}\n`);
  }

  close(): void {
    process.off('SIGINT', this.end);
    this.end();
  }
}
