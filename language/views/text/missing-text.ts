import type { Key, Missing } from '../../job/job.ts';

/** What has no numbers, and why: `drive: slab-61, which it is taken from, has an error`. */
export function missingText(keys: readonly Key[], missing: readonly Missing[]): string[] {
  const whys = new Map(missing.map((one): [Key, Missing] => [one.key, one]));
  return [...new Set(keys)].map(key => {
    const why = whys.get(key);
    if (why === undefined) return `${nameOf(key)}: see the errors below`;
    return `${why.name}: ${becauseOf(why)}`;
  });
}

/** Of one thing alone: `its own text has an error`. */
export function missingReason(key: Key, missing: readonly Missing[]): string {
  const why = missing.find(one => one.key === key);
  return why === undefined ? 'see its errors' : becauseOf(why);
}

function becauseOf({ name, because }: Missing): string {
  const cause = nameOf(because);
  return `${cause === name ? 'its own text' : `${cause}, which it is taken from,`} has an error`;
}

function nameOf(key: Key): string {
  const [thing = key, part] = key.replace(/^[a-z-]+:/, '').split('/');
  return part === 'laying' ? `the units of ${thing}` : thing;
}
