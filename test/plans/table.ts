/** Prints what the rules say to the plans of this folder: node test/plans/table.ts */
import { count, plansOf } from './judged.ts';

const row = (cells: readonly string[]): string =>
  cells.map((c, i) => (i < 2 ? c.padEnd([7, 32][i] ?? 0) : i < 6 ? c.padStart(8) : `  ${c}`)).join('');

console.log(row(['kind', 'plan', 'errors', 'warnings', 'infos', 'hints', 'rules']));
for (const plan of [...plansOf('sound'), ...plansOf('faulty')]) {
  const told = [...new Set(plan.found.filter((f) => f.severity === 'info').map((f) => f.rule))].sort();
  console.log(
    row([
      plan.kind,
      plan.name,
      ...(['error', 'warning', 'info', 'hint'] as const).map((s) => String(count(plan, s))),
      plan.kind === 'faulty' ? plan.firm.join(', ') : `(${told.join(', ')})`,
    ]),
  );
}
