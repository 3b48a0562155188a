/** Prints tube paint beside the pastes that handbooks print, family by family: node test/film/pastes-table.ts */
import { pigment, printed, type Row, rows, tube, tubeRange } from './printed-pastes.ts';

const per = (x: number): string => `${Math.round(100 * x)} %`;
const row = (cells: readonly string[]): string =>
  cells.map((c, i) => (i < 2 ? c.padEnd([20, 10][i]!) : c.padStart(i === 4 ? 15 : 9))).join('');
const off = (r: Row): number => tube(r.pigment, 0, 0) - printed(r);

console.log('Pigment in a tube by volume\n');
for (const family of new Set(rows.map((r) => pigment(r.pigment).paste))) {
  const here = rows.filter((r) => pigment(r.pigment).paste === family);
  console.log(`${family?.family ?? ''}`);
  console.log(row(['pigment', 'handbook', 'printed', 'likely', 'range', 'off']));
  for (const r of here.sort((a, b) => (a.pigment < b.pigment ? -1 : 1))) {
    const [least, most] = tubeRange(r.pigment);
    console.log(
      row([
        r.pigment,
        r.from,
        per(printed(r)),
        per(tube(r.pigment, 0, 0)),
        `${per(least)} to ${per(most)}`,
        per(off(r)),
      ]),
    );
  }
  const errors = here.map(off).sort((a, b) => a - b);
  console.log(`middle of the errors ${per(errors[Math.floor(errors.length / 2)]!)}, ${here.length} pastes\n`);
}
