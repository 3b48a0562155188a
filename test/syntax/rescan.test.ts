/** A text cut again after an edit is cut as if nothing had been known of it. */
import { expect, test } from 'vitest';
import { type Chunk, rescan, scan, shapeOf } from '../../language/src/syntax/scan.ts';
import { edits, random } from '../fuzz/text.ts';
import { tries } from '../long.ts';
import { samples } from '../plan/samples.ts';

/** Every chunk of the new text; the very objects of before where it says so. */
function check(before: string, text: string): { readonly kept: number; readonly moved: number } {
  const chunks = scan(before);
  const again = rescan(text, { text: before, chunks });
  const cuts = (chunks: readonly Chunk[]) =>
    chunks.map((c) => ({ ...shapeOf(c), start: c.start, end: c.end, description: c.description }));
  expect(cuts(again.chunks)).toEqual(cuts(scan(text)));
  for (let i = 0; i < again.kept; i++) expect(again.chunks[i]).toBe(chunks[i]);
  return again;
}

test('after random edits, each on the one before and on the text itself', () => {
  for (const { text } of samples)
    for (let seed = 1; seed <= tries(20, 400); seed++) {
      let before = text;
      for (const next of edits(text, seed, 6)) {
        check(before, next);
        check(text, next);
        check(next, text);
        before = next;
      }
    }
});

test('after a stretch is put in, taken out or moved', () => {
  const whole = samples.map((s) => s.text).join('\n');
  const next = random(7);
  const anywhere = () => Math.floor(next() * whole.length);
  for (let i = 0; i < tries(150, 3000); i++) {
    const [from = 0, to = 0, at = 0] = [anywhere(), anywhere(), anywhere()].sort((a, b) => a - b);
    const without = whole.slice(0, from) + whole.slice(to);
    check(whole, without);
    check(without, whole);
    check(whole, whole.slice(0, from) + whole.slice(to, at) + whole.slice(from, to) + whole.slice(at));
  }
});

test.each([
  ['a comment is closed that was open', 'glaze a { }\nglaze b { /* x\n}\nglaze c { }\n', '*/'],
  ['a comment behind a closed block', 'glaze a { } /* x\nglaze b { }\nglaze c { }\n', '*/'],
  ['a brace too many behind a block', 'glaze a { }\nglaze b { }\nglaze c { }\n', '}'],
  ['a field behind a brace in the middle', 'glaze a { film 8 µm }\n  coats 2\n}\nglaze c { }\n', ' '],
  ['a description', 'glaze a { }\n/// what it is\nglaze b { }\n', '/// and more\n'],
  ['a quote', 'glaze a { note "x" }\nglaze b { note "y" }\nglaze c { }\n', '"'],
])('%s, at every place, with the text far below', (_, text, put) => {
  const long = text + `${' '.repeat(300)}\n`.repeat(2) + text.repeat(3);
  for (let at = 0; at <= long.length; at++) {
    if (at > text.length + 4 && at % 97 > 0) continue;
    const edited = long.slice(0, at) + put + long.slice(at);
    check(long, edited);
    check(edited, long);
  }
});

test('an edit in the middle of many blocks keeps what is above and moves what is below', () => {
  const text = Array.from({ length: 100 }, (_, i) => `glaze g${i} {\n  film 8 µm\n}\n`).join('');
  const at = text.indexOf('8', text.indexOf('g50'));
  const { kept, moved } = check(text, `${text.slice(0, at)}1${text.slice(at)}`);
  expect(kept).toBeGreaterThan(35);
  expect(kept + moved).toBeGreaterThan(80);
});
