/**
 * Normal equations of a fit whose unknowns are spectra and a few figures more: a band of the spectra is tied to its near
 * neighbours only, the figures to everything. The matrix is banded with a dense border, and is solved as such: Cholesky
 * of the band, Schur complement for the border (Golub & Van Loan, Matrix Computations, §4.3 and §3.4).
 */
export class Bordered {
  readonly size: number;
  readonly width: number;
  readonly border: number;
  /** lower half of the band: row i, columns i − width to i */
  readonly band: Float64Array;
  /** border against band: border row by row */
  readonly side: Float64Array;
  /** border against border, whole */
  readonly corner: Float64Array;
  /** the right side, band first */
  readonly right: Float64Array;

  /** `size` unknowns of which no two more than `width` apart are tied, and `border` that are tied to all. */
  constructor(size: number, width: number, border: number) {
    this.size = size;
    this.width = width;
    this.border = border;
    this.band = new Float64Array(size * (width + 1));
    this.side = new Float64Array(border * size);
    this.corner = new Float64Array(border * border);
    this.right = new Float64Array(size + border);
  }

  clear(): void {
    for (const part of [this.band, this.side, this.corner, this.right]) part.fill(0);
  }

  /** Adds the square of a residual: its derivatives `slopes` by the unknowns `at`, and what it should fall by. */
  add(at: ArrayLike<number>, slopes: ArrayLike<number>, miss: number): void {
    const { size, width } = this;
    for (let i = 0; i < at.length; i++) {
      const p = at[i]!;
      this.right[p]! += slopes[i]! * miss;
      for (let j = 0; j < at.length; j++) {
        const q = at[j]!;
        const v = slopes[i]! * slopes[j]!;
        if (p < size) {
          if (q <= p) this.band[p * (width + 1) + width + q - p]! += v;
        } else if (q < size) this.side[(p - size) * size + q]! += v;
        else this.corner[(p - size) * this.border + (q - size)]! += v;
      }
    }
  }

  /** The step that solves the equations with every diagonal entry raised by the factor 1 + `damping`. */
  solve(damping: number): Float64Array | undefined {
    const { size, width, border } = this;
    const w = width + 1;
    const l = Float64Array.from(this.band);
    for (let i = 0; i < size; i++) l[i * w + width]! *= 1 + damping;
    for (let i = 0; i < size; i++) {
      const from = Math.max(0, i - width);
      for (let j = from; j <= i; j++) {
        let sum = l[i * w + width + j - i]!;
        const least = Math.max(from, j - width);
        const ri = i * w + width - i;
        const rj = j * w + width - j;
        for (let k = least; k < j; k++) sum -= l[ri + k]! * l[rj + k]!;
        if (j < i) l[ri + j] = sum / l[rj + j]!;
        else {
          if (!(sum > 0)) return undefined;
          l[ri + i] = Math.sqrt(sum);
        }
      }
    }
    const forward = (v: Float64Array): void => {
      for (let i = 0; i < size; i++) {
        let sum = v[i]!;
        const r = i * w + width - i;
        for (let k = Math.max(0, i - width); k < i; k++) sum -= l[r + k]! * v[k]!;
        v[i] = sum / l[r + i]!;
      }
    };
    // L⁻¹ of each border row and of the right side; the border's own equations are what is left.
    const rows = Array.from({ length: border }, (_, r) => {
      const row = this.side.slice(r * size, (r + 1) * size);
      forward(row);
      return row;
    });
    const z = this.right.slice(0, size);
    forward(z);
    const c = Float64Array.from(this.corner);
    const y = this.right.slice(size);
    for (let r = 0; r < border; r++) {
      c[r * border + r]! *= 1 + damping;
      for (let q = 0; q <= r; q++) {
        const dot = inner(rows[r]!, rows[q]!);
        c[r * border + q]! -= dot;
        if (q < r) c[q * border + r]! -= dot;
      }
      y[r]! -= inner(rows[r]!, z);
    }
    const own = cholesky(c, y, border);
    if (!own) return undefined;
    for (let r = 0; r < border; r++) {
      const row = rows[r]!;
      for (let i = 0; i < size; i++) z[i]! -= own[r]! * row[i]!;
    }
    for (let i = size - 1; i >= 0; i--) {
      const r = i * w + width - i;
      const v = z[i]! / l[r + i]!;
      z[i] = v;
      for (let k = Math.max(0, i - width); k < i; k++) z[k]! -= l[r + k]! * v;
    }
    const out = new Float64Array(size + border);
    out.set(z);
    out.set(own, size);
    return out;
  }
}

const inner = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
};

/** Solves the symmetric positive system `matrix` (n × n, overwritten) for `right`; undefined where it is not positive. */
function cholesky(matrix: Float64Array, right: Float64Array, n: number): Float64Array | undefined {
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= matrix[i * n + k]! * matrix[j * n + k]!;
      if (j < i) matrix[i * n + j] = sum / matrix[j * n + j]!;
      else {
        if (!(sum > 0)) return undefined;
        matrix[i * n + i] = Math.sqrt(sum);
      }
    }
  const out = Float64Array.from(right);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) out[i]! -= matrix[i * n + k]! * out[k]!;
    out[i]! /= matrix[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) out[i]! -= matrix[k * n + i]! * out[k]!;
    out[i]! /= matrix[i * n + i]!;
  }
  return out;
}
