/** One list of words: grammar, scanner, examples and reserved words hold to it. */
import { AstUtils, GrammarAST, GrammarUtils } from 'langium';
import { describe, expect, test } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { langium } from '../../language/src/syntax/parser.ts';
import {
  declarationWords,
  fieldsOf,
  isNameable,
  isReserved,
  joiningWords,
  WORDED,
} from '../../language/src/syntax/words.ts';

const grammar = langium().Grammar;
const keywords = new Set(
  [...GrammarUtils.getAllReachableRules(grammar, false)]
    .filter(GrammarAST.isParserRule)
    .flatMap((r) =>
      AstUtils.streamAllContents(r)
        .filter(GrammarAST.isKeyword)
        .map((k) => k.value)
        .toArray(),
    )
    .filter((k) => /^[a-z]/.test(k)),
);
const listed = new Set(
  [...declarationWords, ...WORDED.flatMap(fieldsOf)].map((w) => w.word).concat(joiningWords),
);

test('every word of the grammar is listed, and every listed word is in the grammar', () => {
  expect([...keywords].sort()).toEqual([...listed].sort());
});

describe('examples', () => {
  test.each(declarationWords.map((w) => [w.word, w] as const))('of %s parses', (_, w) => {
    const head = w.only === 'record' ? 'record "x"\n' : '';
    expect(
      readPlan(w.word === 'record' || w.word === 'plan' ? w.example : `${head}${w.example}`, 'file:///w')
        .problems,
    ).toEqual([]);
  });
  test.each(WORDED.flatMap((b) => fieldsOf(b).map((w) => [b, w.word, w] as const)))(
    'of the %s field %s parses',
    (block, _, w) => {
      const head =
        block === 'layer'
          ? `${w.only === 'record' ? 'record' : 'plan'} "x"\nglaze a`
          : block === 'studio'
            ? 'studio'
            : 'pigment p like PY43';
      const plan = readPlan(`${head} { ${w.example} }`, 'file:///w');
      expect(plan.problems).toEqual([]);
      const of = block === 'layer' ? plan.layers[0] : block === 'studio' ? plan.studio : plan.pigments[0];
      expect(of?.fields.map((f) => [f.name, f.misplaced])).toEqual([[w.word, undefined]]);
    },
  );
});

describe('reserved words', () => {
  test.each([...listed])('%s', (word) => {
    const plan = readPlan(`area ${word} 50 %`, 'file:///w');
    if (isNameable(word)) expect(plan.areas[0]?.name).toBe(word);
    else {
      expect(isReserved(word) || word === 'color').toBe(true);
      expect(plan.problems.length).toBeGreaterThan(0);
    }
  });
});
