/** What an editor shows of a plan, held to marks in its text (see marked.ts). */
import { describe, expect, test } from 'vitest';
import { rewrites } from '../../language/src/features/actions.ts';
import { colourBoxes } from '../../language/src/features/colours.ts';
import { completion } from '../../language/src/features/completion.ts';
import { hints } from '../../language/src/features/hints.ts';
import { hover } from '../../language/src/features/hover.ts';
import { lenses } from '../../language/src/features/lenses.ts';
import { definition, nameAt, references } from '../../language/src/features/names.ts';
import { type Symbol as PlanSymbol, symbols } from '../../language/src/features/symbols.ts';
import { semanticTokens, TOKEN_TYPES } from '../../language/src/features/tokens.ts';
import type { Place } from '../../language/src/plan/plan.ts';
import { findings } from '../../language/src/rules/check.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';
import { nameFault } from '../../language/src/syntax/name-fault.ts';
import { applied } from '../rules/harness.ts';
import { analysed, type Mark, type Marked, marks, texts } from './marked.ts';

const of = (feature: string) =>
  texts.flatMap(({ marks, ...t }) =>
    marks
      .filter((m) => m.feature === feature)
      .map((m) => [`${t.file}: ${m.text}`, m, { marks, ...t }] as const),
  );
const sorted = (list: readonly string[]) => list.toSorted();
const covers = (place: Place, { cursor }: Mark) => place.start <= cursor && cursor <= place.end;
const errors = (text: string, uri: string) => {
  const { plan, study } = analysed(text, uri);
  return findings(plan, study, { strict: true }).filter((f) => f.severity === 'error');
};

test('every feature has its marks, and nothing else is marked', () => {
  const known = [
    'hover',
    'complete',
    'rename',
    'definition',
    'hint',
    'lens',
    'token',
    'symbol',
    'colour',
    'action',
  ];
  const marked = new Set(texts.flatMap((t) => t.marks.map((m) => m.feature)));
  expect([...marked].sort()).toEqual(known.sort());
  expect(() => marks('//? hover at nothing: x\nplan "x"')).toThrow('no ‘nothing’');
});

/** Pieces of the words shown where the cursor is. */
describe('hover', () => {
  test.each(of('hover'))('%s', (_, mark, { text, uri }) => {
    const { plan, study } = analysed(text, uri);
    const shown = hover(plan, study, mark.cursor);
    for (const piece of mark.wanted) expect(shown?.markdown.replaceAll('\\', '')).toContain(piece);
    expect(shown && covers(shown.place, mark)).toBe(true);
    expect(shown?.markdown).not.toMatch(/undefined|NaN|\[object/);
  });
});

/** Labels that are offered, those with ! that are not; `nothing` for none at all. */
describe('completion', () => {
  test.each(of('complete'))('%s', (_, mark, { text, uri }) => {
    const { items, place } = completion(analysed(text, uri).plan, text, mark.cursor);
    const labels = items.map((i) => i.label);
    if (mark.wanted[0] === 'nothing') expect(labels).toEqual([]);
    else
      for (const label of mark.wanted)
        if (label.startsWith('!')) expect(labels).not.toContain(label.slice(1));
        else expect(labels).toContain(label);
    expect(place.end).toBe(mark.cursor);
    expect(text.slice(place.start, place.end)).toMatch(/^[^\s]*$/);
    expect(new Set(labels).size).toBe(labels.length);
  });
});

/** The new name and the number of places; afterwards everything means what it meant. */
describe('rename', () => {
  test.each(of('rename'))('%s', (_, mark, { text, uri }) => {
    const [name = '', count] = mark.wanted;
    const { plan } = analysed(text, uri);
    const at = nameAt(plan, mark.cursor);
    expect(at && text.slice(at.place.start, at.place.end)).toBe(text.slice(mark.start, mark.end));
    expect(nameFault(name, at?.inFormulas ?? false)).toBeUndefined();
    const places = at ? references(plan, at.target, true) : [];
    expect(`${places.length} places`).toBe(count);
    const edits = places.map((place) => ({ place, text: name }));
    const after = analysed(applied(text, { title: name, edits }, uri), uri).plan;
    expect(after.names.map((n) => [n.role, n.kind, n.name])).toEqual(
      plan.names.map((n) => [n.role, n.kind, n.name === at?.name ? name : n.name]),
    );
    expect(after.problems).toEqual(plan.problems);
  });
});

/** How the line of the declaration begins, in whatever file; `nothing` for what the catalogue has. */
describe('definition', () => {
  test.each(of('definition'))('%s', (_, mark, { text, uri }) => {
    const target = definition(analysed(text, uri).plan, mark.cursor);
    if (mark.wanted[0] === 'nothing') return expect(target).toBeUndefined();
    const read = target && nodeHost([new URL('.', import.meta.url).pathname]).read(target.uri);
    const there = target?.uri === uri ? text : read && 'text' in read ? read.text : '';
    const line = there.slice(there.lastIndexOf('\n', target?.start ?? 0) + 1);
    expect(line.startsWith(mark.wanted[0] as string), line.split('\n')[0]).toBe(true);
  });
});

/** What a whole text shows, and which feature does: each mark is about one thing, and each thing has its mark. */
interface Shown {
  readonly at: number;
  readonly words: readonly string[];
}
const flat = (list: readonly PlanSymbol[], under?: string): (Shown & { readonly name: string })[] =>
  list.flatMap((s) => [
    { at: s.namePlace.start, name: s.name, words: [s.kind, s.detail, ...(under ? [`under ${under}`] : [])] },
    ...flat(s.children, s.name),
  ]);
const WHOLE: Readonly<Record<string, (of: Marked) => readonly Shown[]>> = {
  hint: ({ text, uri }) => {
    const { plan, study } = analysed(text, uri);
    return hints(plan, study, true).map((h) => ({ at: h.offset, words: [h.text] }));
  },
  lens: ({ text, uri }) => {
    const { plan, study } = analysed(text, uri);
    return lenses(plan, study).map((l) => ({ at: l.place.start, words: [l.text] }));
  },
  token: ({ text, uri }) =>
    semanticTokens(analysed(text, uri).plan).map((t) => ({
      at: t.start,
      words: [TOKEN_TYPES[t.type] as string, ...(t.declaration ? ['declaration'] : [])],
    })),
  symbol: ({ text, uri }) => flat(symbols(analysed(text, uri).plan)),
  colour: ({ text, uri }) => {
    const { plan, study } = analysed(text, uri);
    return colourBoxes(plan, study)
      .filter((b) => b.written)
      .map((b) => ({
        at: b.place.start,
        words: [
          `#${b.rgb
            .map((v) =>
              Math.round(v * 255)
                .toString(16)
                .padStart(2, '0'),
            )
            .join('')}`,
        ],
      }));
  },
};

describe.each(Object.entries(WHOLE))('%s', (feature, shownIn) => {
  const marked = texts.filter((t) => t.marks.some((m) => m.feature === feature));
  test.each(marked.map((t) => [t.file, t] as const))('%s', (_, t) => {
    const left = [...shownIn(t)];
    for (const mark of t.marks.filter((m) => m.feature === feature)) {
      const i = left.findIndex(
        (s) =>
          s.at === (feature === 'hint' ? mark.end : mark.start) &&
          mark.wanted.every((w) => s.words.some((words) => words.includes(w))),
      );
      expect(i, `${mark.text}; there is ${JSON.stringify(left)}`).toBeGreaterThanOrEqual(0);
      left.splice(i, 1);
    }
    expect(left, 'shown and not marked').toEqual([]);
  });
});

/** How the title of each fix and rewrite at the cursor begins; none of them makes an error. */
describe('actions', () => {
  test.each(of('action'))('%s', (_, mark, { text, uri }) => {
    const { plan, study } = analysed(text, uri);
    const fixes = findings(plan, study, { strict: true })
      .filter((f) => covers(f.place, mark))
      .flatMap((f) => f.fixes);
    const offered = [...fixes, ...rewrites(plan, study, text, mark.cursor).map((r) => r.fix)];
    const titles = offered.map((f) => f.title);
    expect(sorted(titles.map((t) => mark.wanted.find((w) => t.startsWith(w)) ?? t))).toEqual(
      sorted(mark.wanted),
    );
    const before = errors(text, uri).length;
    for (const fix of offered) {
      const after = applied(text, fix, uri);
      expect(after, fix.title).not.toBe(text);
      // a layer of a record belongs into a record, so there it is looked at as one
      const record = fix.title.startsWith('Turn ');
      expect(
        errors(record ? after.replace('plan "', 'record "') : after, uri).length,
        fix.title,
      ).toBeLessThanOrEqual(before);
    }
  });
});
