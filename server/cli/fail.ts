/** What kept a verb from running as asked: said on standard error, in a sentence that tells what to do. */
export class Failure extends Error {}

const EXIT = { fine: 0, findings: 1, notRun: 2 } as const;

/** Says what went wrong; the other files are worked on all the same. */
export function complain(message: string): void {
  process.stderr.write(`paving: ${message}\n`);
  process.exitCode = EXIT.notRun;
}

/** Findings make the exit code 1, unless something already could not run. */
export function exitWithFindings(): void {
  process.exitCode ??= EXIT.findings;
}
