import { writeFile } from 'node:fs/promises';
import { complain } from './fail.ts';

/** Writes a text into its file; false, and said, where that may not be. */
export async function writeBack(file: string, show: string, text: string): Promise<boolean> {
  try {
    await writeFile(file, text);
    return true;
  } catch {
    complain(`${show} can't be written to. Check that you may write to it.`);
    return false;
  }
}
