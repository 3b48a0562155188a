/** Words near a mistyped one. */

/** Edits (insert, delete, replace, swap of neighbours) between two words; stops counting beyond `most`. */
export function editDistance(a: string, b: string, most = 10): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(
        (previous[j] as number) + 1,
        (row[j - 1] as number) + 1,
        (previous[j - 1] as number) + (same ? 0 : 1),
      );
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (before[j - 2] as number) + 1);
      row.push(least);
    }
    before = previous;
    previous = row;
  }
  return previous[b.length] as number;
}

/** The nearest candidates, best first; none that would take more than one edit, two from four letters on, three from nine. Long words are not compared. */
export function nearest(word: string, candidates: readonly string[], most = 3): string[] {
  if (word.length > 60) return [];
  const plain = word.toLowerCase();
  const limit = plain.length < 4 ? 1 : plain.length < 9 ? 2 : 3;
  return candidates
    .map((candidate, order) => ({
      candidate,
      order,
      distance: editDistance(plain, candidate.toLowerCase(), limit),
    }))
    .filter((c) => c.distance <= limit)
    .sort((x, y) => x.distance - y.distance || x.order - y.order)
    .slice(0, most)
    .map((c) => c.candidate);
}

/** A few of the candidates, the likest first, however far they are: what there is to choose from. */
export function likest(word: string, candidates: readonly string[], most = 6): string[] {
  // beyond that nobody can tell them apart by their letters
  const plain = word.toLowerCase().slice(0, 60);
  return candidates
    .map((candidate, order) => ({
      candidate,
      order,
      distance: editDistance(plain, candidate.toLowerCase(), 60),
    }))
    .sort((x, y) => x.distance - y.distance || x.order - y.order)
    .slice(0, most)
    .map((c) => c.candidate);
}
