// The few comparisons the suite needs: it also runs where Node's own are missing.
export function same(found: unknown, wanted: unknown): void {
  const [left, right] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (left !== right) throw new Error(`found ${left}, wanted ${right}`);
}

/** Waits for what the editor does in its own time. */
export async function soon<T>(
  what: string,
  look: () => T | undefined | Promise<T | undefined>,
  seconds = 10
): Promise<T> {
  for (let tries = 0; tries < seconds * 20; tries++) {
    const found = await look();
    if (found !== undefined) return found;
    await new Promise(resolve => setTimeout(resolve, 50));
  }
  throw new Error(`${what}: not within ${seconds} seconds`);
}
