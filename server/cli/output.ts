import { writeFile } from 'node:fs/promises';
import pico from 'picocolors';
import type { Colours } from '../../language/views/text/colours.ts';
import { complain, Failure } from './fail.ts';

/** A report goes to a file, else to standard output; its last line is ended. */
export async function write(report: string, file: string | undefined): Promise<void> {
  const text = report.endsWith('\n') || report === '' ? report : `${report}\n`;
  if (file === undefined) {
    process.stdout.write(text);
    return;
  }
  await writeFile(file, text).catch(() => {
    throw new Failure(`${file} can't be written. Check that its folder is there and may be written to.`);
  });
}

/** Data for another program: indented, so that a person can read it too. */
export function asJson(value: unknown): string {
  return JSON.stringify(value, undefined, 2);
}

/** Colour only on a terminal, and not where the reader does not want it. */
export function coloursFor(file: string | undefined): Colours {
  const { NO_COLOR, TERM } = process.env;
  const coloured = file === undefined && process.stdout.isTTY === true && (NO_COLOR ?? '') === '' && TERM !== 'dumb';
  const paint = pico.createColors(coloured);
  return { strong: paint.bold, faint: paint.dim, error: paint.red, warning: paint.yellow, note: paint.cyan };
}

/** A reader that stops reading early, such as `head`, is no failure. */
export function allowClosedOutput(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') complain("the output can't be written. Is the disk full?");
  });
}
