/** Whether two plain values hold the same: compared as they are, since writing both down first costs more than all else. */
export function sameContent(left: unknown, right: unknown): boolean {
  if (left === right) return true;
  if (typeof left !== 'object' || typeof right !== 'object' || left === null || right === null)
    return Number.isNaN(left) && Number.isNaN(right);
  if (Array.isArray(left) || Array.isArray(right)) return sameLists(left, right);
  const names = Object.keys(left);
  if (names.length !== Object.keys(right).length) return false;
  const [one, other] = [left as Readonly<Record<string, unknown>>, right as Readonly<Record<string, unknown>>];
  return names.every(name => Object.hasOwn(other, name) && sameContent(one[name], other[name]));
}

function sameLists(left: unknown, right: unknown): boolean {
  if (!Array.isArray(left) || !Array.isArray(right) || left.length !== right.length) return false;
  return left.every((item, index) => sameContent(item, right[index]));
}
