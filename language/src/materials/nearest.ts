/** Words near a mistyped one. */

const rows = [new Uint8Array(256), new Uint8Array(256), new Uint8Array(256)] as const;

/** Edits (insert, delete, replace, swap of neighbours) between two words; stops counting beyond `most`, and at 200 letters. */
export function editDistance(one: string, other: string, most = 10): number {
  const a = one.slice(0, 200);
  const b = other.slice(0, 200);
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let [before, previous, row] = rows;
  for (let j = 0; j <= b.length; j++) previous[j] = j;
  for (let i = 1; i <= a.length; i++) {
    row[0] = i;
    let best = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a.charCodeAt(i - 1) === b.charCodeAt(j - 1);
      let least = Math.min(previous[j]! + 1, row[j - 1]! + 1, previous[j - 1]! + (same ? 0 : 1));
      if (
        i > 1 &&
        j > 1 &&
        a.charCodeAt(i - 1) === b.charCodeAt(j - 2) &&
        a.charCodeAt(i - 2) === b.charCodeAt(j - 1)
      )
        least = Math.min(least, before[j - 2]! + 1);
      row[j] = least;
      if (least < best) best = least;
    }
    // a swap may still save one
    if (best > most + 1) return most + 1;
    [before, previous, row] = [previous, row, before];
  }
  return previous[b.length]!;
}

/**
 * The nearest candidates, best first: none that would take more than one edit, two from four letters on, three from
 * nine; after them those of which it is one of the words, as egg is of egg-tempera. Long words are not compared.
 */
export function nearest(word: string, candidates: readonly string[], most = 3): string[] {
  if (word.length > 60) return [];
  const plain = word.toLowerCase();
  const limit = plain.length < 4 ? 1 : plain.length < 9 ? 2 : 3;
  const partly = (candidate: string): boolean =>
    plain.length > 2 && candidate.includes('-') && candidate.toLowerCase().split('-').includes(plain);
  return candidates
    .map((candidate, order) => {
      const distance = editDistance(plain, candidate.toLowerCase(), limit);
      return { candidate, order, distance: distance > limit && partly(candidate) ? limit : distance };
    })
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
