import { Session, type Profiler } from 'node:inspector/promises';

/** How often the pieces of the code ran while something was worked out: a count, the same on every machine. */
export async function countedWork(work: () => void): Promise<number> {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  work();
  const { result } = await session.post('Profiler.takePreciseCoverage');
  await session.post('Profiler.stopPreciseCoverage');
  session.disconnect();
  return result.filter(({ url }) => url.includes('/language/')).reduce((sum, script) => sum + ranOf(script), 0);
}

function ranOf({ functions }: Profiler.ScriptCoverage): number {
  return functions.flatMap(({ ranges }) => ranges).reduce((sum, { count }) => sum + count, 0);
}
