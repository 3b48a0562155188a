import { fileURLToPath } from 'node:url';
import { fencedPlans } from '../../features/markdown.ts';
import { format as canonical } from '../../syntax/format.ts';
import { type Input, isNote, readEach } from '../input.ts';
import { oneLine, printable } from '../paper.ts';
import { say, tried } from '../say.ts';
import { mustHoldAll, writeWhole } from '../write.ts';

/** A note keeps every word outside its plans; each plan fenced in it is brought into form where it stands. */
function formattedNote(note: string): string {
  let text = note;
  for (const { start, end } of fencedPlans(note).toReversed()) {
    const plan = note.slice(start, end);
    const result = canonical(plan);
    if ('text' in result) text = text.slice(0, start) + result.text + text.slice(end);
  }
  return text;
}

function formatted(input: Input): string {
  if (isNote(input.path)) return formattedNote(input.text);
  const result = canonical(input.text);
  if ('text' in result) return result.text;
  say(`${input.path} is left as it is: ${result.unchanged}.`);
  return input.text;
}

/** `format`: canonical form in place; `--check` only says what would change. Standard input goes to standard output. */
export function format(names: readonly string[], options: { readonly check?: boolean }): number {
  let changed = 0;
  let { inputs, all } = readEach(names, { whole: true });
  for (const input of inputs) {
    const text = formatted(input);
    const differs = text !== input.text;
    if (differs) changed++;
    if (options.check) {
      if (differs) process.stdout.write(`${oneLine(input.path)}\n`);
    } else if (input.path === '<standard input>')
      // what another program reads is the text itself
      process.stdout.write(process.stdout.isTTY ? printable(text) : text);
    else if (differs) {
      const done = tried(() => {
        const path = fileURLToPath(input.uri);
        mustHoldAll(input, path);
        writeWhole(path, text);
        process.stdout.write(`${oneLine(input.path)}\n`);
      });
      all &&= done;
    }
  }
  if (!all) return 2;
  return options.check && changed > 0 ? 1 : 0;
}
