/** Small dense linear systems: Gaussian elimination with partial pivoting, for Newton steps of a few dozen unknowns. */

/** Solves A x = b. `a` is n×n, row by row; both are overwritten. Undefined where A is singular. */
export function solve(a: Float64Array, b: Float64Array): Float64Array | undefined {
  const n = b.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r * n + c]!) > Math.abs(a[pivot * n + c]!)) pivot = r;
    if (!(Math.abs(a[pivot * n + c]!) > 1e-300)) return undefined;
    if (pivot !== c) {
      for (let k = c; k < n; k++) {
        const held = a[c * n + k]!;
        a[c * n + k] = a[pivot * n + k]!;
        a[pivot * n + k] = held;
      }
      const held = b[c]!;
      b[c] = b[pivot]!;
      b[pivot] = held;
    }
    for (let r = c + 1; r < n; r++) {
      const f = a[r * n + c]! / a[c * n + c]!;
      if (f === 0) continue;
      for (let k = c; k < n; k++) a[r * n + k]! -= f * a[c * n + k]!;
      b[r]! -= f * b[c]!;
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    let v = b[r]!;
    for (let k = r + 1; k < n; k++) v -= a[r * n + k]! * b[k]!;
    b[r] = v / a[r * n + r]!;
  }
  return b;
}
