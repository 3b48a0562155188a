import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format as canonical } from '../../syntax/format.ts';
import { readInputs } from '../input.ts';

/** `format`: canonical form in place; `--check` only says what would change. Standard input goes to standard output. */
export function format(names: readonly string[], options: { readonly check?: boolean }): number {
  let changed = 0;
  for (const input of readInputs(names)) {
    const result = canonical(input.text);
    const text = 'text' in result ? result.text : input.text;
    if ('unchanged' in result) console.error(`${input.path} is left as it is: ${result.unchanged}`);
    const differs = text !== input.text;
    if (differs) changed++;
    if (options.check) {
      if (differs) process.stdout.write(`${input.path}\n`);
    } else if (input.path === '<standard input>') process.stdout.write(text);
    else if (differs) {
      writeFileSync(fileURLToPath(input.uri), text);
      process.stdout.write(`${input.path}\n`);
    }
  }
  return options.check && changed > 0 ? 1 : 0;
}
