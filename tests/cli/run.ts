import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

export const root = path.resolve(import.meta.dirname, '../..');
const bundle = path.join(root, 'dist/paving.cjs');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line as a user does: the built bundle, in a process of its own. */
export function paving(
  given: readonly string[],
  options: { cwd?: string; input?: string | Uint8Array; env?: NodeJS.ProcessEnv } = {}
): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundle, ...given], {
    cwd: options.cwd ?? root,
    input: options.input ?? '',
    env: options.env ?? process.env,
    encoding: 'utf8',
    maxBuffer: 100_000_000
  });
  return { code: status, out: stdout, err: stderr };
}

/** A folder that holds these files and is gone when the test is over. */
export function folder(files: Readonly<Record<string, string | Uint8Array>>): string {
  const at = mkdtempSync(path.join(tmpdir(), 'paving-'));
  onTestFinished(() => rmSync(at, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(at, name)), { recursive: true });
    writeFileSync(path.join(at, name), content);
  }
  return at;
}

/** A job without any finding above a note, and with numbers. */
export const GOOD = `job "Back terrace" { rules north-america }
site { soil sand, winters mild, benchmark sill, ground level with sill }
unit slab-16 { size 16 x 16 x 2 in }
area terrace {
  outline rectangle 12 x 16 ft
  traffic foot
  finish level with sill
  paving slab-16 in running-bond
  base crushed-stone 6 in
  edges {
    near meets house-wall
    the rest meets lawn, edging spiked-strip }
}
`;

/** The same with one error, in its last area. */
export const FAULTY = `${GOOD}
area path {
  outline rectangle 3 x 10 ft, corner (20 ft, 0)
  traffic foot
  base gravle 4 in
  edges { all round meets lawn, edging spiked-strip }
}
`;

export const LIBRARY = 'unit slab-16 { size 16 x 16 x 2 in }\n';
