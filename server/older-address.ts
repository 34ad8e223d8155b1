// The address of a text at a commit, as the editor shows and opens it.
import { URI, Utils } from 'vscode-uri';
import type { OlderSpec } from './older-jobs.ts';
import { olderScheme } from './protocol.ts';

/** The name of its tab tells the revision: `quote-1 drive.paving`. */
export function olderAddress({ folder, commit, path }: OlderSpec, revision: string): string {
  const name = `${revision.replaceAll('/', '-')} ${path.slice(path.lastIndexOf('/') + 1)}`;
  const query = JSON.stringify({ folder, commit, path });
  return Utils.joinPath(URI.from({ scheme: olderScheme, path: '/', query }), path, '..', name).toString();
}

/** Undefined for an address that none of ours is: anyone can write one. */
export function olderSpecAt(address: string): OlderSpec | undefined {
  const { scheme, query } = URI.parse(address);
  if (scheme !== olderScheme) return undefined;
  try {
    const { folder, commit, path } = JSON.parse(query) as Partial<Record<string, unknown>>;
    const isWhole = typeof folder === 'string' && typeof commit === 'string' && typeof path === 'string';
    return isWhole && /^[0-9a-f]{40,64}$/.test(commit) ? { folder, commit, path } : undefined;
  } catch {
    return undefined;
  }
}
