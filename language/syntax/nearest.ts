/** The candidate that differs least from a misspelt word, if any is near enough to be meant. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  // Of a name of one or two letters every other is near: only its letter case may be wrong.
  let bestDistance = (word.length < 3 ? 0 : Math.max(1, Math.floor(word.length / 3))) + 1;
  for (const candidate of candidates) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase(), bestDistance);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Letters to change, add, drop or swap with their neighbour; stops at `limit`. */
function editDistance(left: string, right: string, limit: number): number {
  if (Math.abs(left.length - right.length) >= limit) return limit;
  let before: number[] = [];
  let previous = Array.from({ length: right.length + 1 }, (_, column) => column);
  for (let row = 1; row <= left.length; row++) {
    const current = [row];
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1];
      let cost = Math.min(previous[column]! + 1, current[column - 1]! + 1, previous[column - 1]! + (same ? 0 : 1));
      if (row > 1 && column > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1])
        cost = Math.min(cost, before[column - 2]! + 1);
      current.push(cost);
    }
    before = previous;
    previous = current;
  }
  return previous[right.length]!;
}
