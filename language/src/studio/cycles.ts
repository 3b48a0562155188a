/** Order in a graph of things that lie on one another. Linear in nodes and edges; cycles are found, never followed. */

export interface Edge {
  readonly from: number;
  readonly to: number;
}

export interface Order<E extends Edge> {
  /** every node, each after those with an edge to it, save along cycles */
  readonly sequence: readonly number[];
  /** one short cycle of every knot of nodes that cannot be ordered, as its edges head to tail */
  readonly cycles: readonly (readonly E[])[];
}

/** Orders nodes 0..count−1 (Tarjan's strongly connected components, without recursion). */
export function order<E extends Edge>(count: number, edges: readonly E[]): Order<E> {
  const out: E[][] = Array.from({ length: count }, () => []);
  for (const e of edges) out[e.from]?.push(e);

  const index = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const knot = new Int32Array(count).fill(-1);
  const next = new Int32Array(count);
  const open: number[] = [];
  const knots: number[][] = [];
  let seen = 0;
  for (let root = 0; root < count; root++) {
    if (index[root] !== -1) continue;
    const path = [root];
    while (path.length > 0) {
      const node = path[path.length - 1]!;
      if (index[node] === -1) {
        index[node] = low[node] = seen++;
        open.push(node);
      }
      const edge = out[node]![next[node]!];
      if (edge) {
        next[node]!++;
        if (index[edge.to] === -1) path.push(edge.to);
        else if (knot[edge.to] === -1) low[node] = Math.min(low[node]!, index[edge.to]!);
        continue;
      }
      path.pop();
      const parent = path[path.length - 1];
      if (parent !== undefined) low[parent] = Math.min(low[parent]!, low[node]!);
      if (low[node] !== index[node]) continue;
      const members: number[] = [];
      let member: number;
      do {
        member = open.pop()!;
        knot[member] = knots.length;
        members.push(member);
      } while (member !== node);
      knots.push(members.reverse());
    }
  }

  const cycles: (readonly E[])[] = [];
  for (let k = knots.length - 1; k >= 0; k--) {
    const start = backEdge(knots[k]!, out, knot, k);
    if (start) cycles.push(shortest(start, out, knot, k));
  }
  return { sequence: knots.reverse().flat(), cycles };
}

/** An edge of a knot that leads back to a smaller number; one always does. A single node is a knot where it lies on itself. */
function backEdge<E extends Edge>(
  members: readonly number[],
  out: readonly E[][],
  knot: Int32Array,
  k: number,
): E | undefined {
  for (const node of members) {
    const back = out[node]!.find((e) => knot[e.to] === k && e.to <= node);
    if (back) return back;
  }
  return undefined;
}

/** The given edge and the shortest way back from its end to its beginning, inside the knot. */
function shortest<E extends Edge>(start: E, out: readonly E[][], knot: Int32Array, k: number): readonly E[] {
  const by = new Map<number, E>();
  const queue = [start.to];
  for (let i = 0; i < queue.length && !by.has(start.from) && start.to !== start.from; i++)
    for (const e of out[queue[i]!]!)
      if (knot[e.to] === k && e.to !== start.to && !by.has(e.to)) {
        by.set(e.to, e);
        queue.push(e.to);
      }
  const back: E[] = [];
  for (let node = start.from; node !== start.to; ) {
    const e = by.get(node);
    if (!e) break;
    back.push(e);
    node = e.from;
  }
  return [start, ...back.reverse()];
}
