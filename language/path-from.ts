/** The path by which a file uses another, both given from one root with forward slashes: `../yard/stone.paving`. */
export function pathFrom(from: string, to: string): string {
  const [folder, file] = [from.split('/').slice(0, -1), to.split('/')];
  let same = 0;
  while (same < folder.length && same < file.length - 1 && folder[same] === file[same]) same++;
  const path = [...folder.slice(same).map(() => '..'), ...file.slice(same)].join('/');
  // `a:b.paving` by itself would be an address.
  return /^[^/]*:/.test(path) ? `./${path}` : path;
}
