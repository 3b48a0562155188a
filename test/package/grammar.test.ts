/** The grammar as the bundles load it is the grammar as Langium loads it. */

import { readFileSync } from 'node:fs';
import { type AstNode, loadGrammarFromJson as langiumsLoader } from 'langium';
import { expect, test } from 'vitest';
import { loadGrammarFromJson } from '../../language/build/grammar-loader.ts';
import { PaintplanGrammar } from '../../language/generated/grammar.ts';

const json = (): string => {
  const source = readFileSync(new URL('../../language/generated/grammar.ts', import.meta.url), 'utf8');
  const written = /loadGrammarFromJson\(('.*')\)/s.exec(source)?.[1] as string;
  return new Function(`return ${written}`)() as string;
};

/** Every node with its place in the tree; a reference as the place of what it refers to. */
function told(root: AstNode): string[] {
  const way = (n: AstNode | undefined): string =>
    n?.$container ? `${way(n.$container)}/${n.$containerProperty}@${n.$containerIndex ?? ''}` : '';
  const lines: string[] = [];
  const walk = (node: AstNode) => {
    lines.push(`${way(node)} ${node.$type}`);
    for (const [key, value] of Object.entries(node)) {
      if (key.startsWith('$')) continue;
      for (const v of Array.isArray(value) ? value : [value])
        if (typeof v !== 'object' || v === null) lines.push(`${way(node)} ${key} ${v}`);
        else if ('$refText' in v) lines.push(`${way(node)} ${key} -> ${way(v.ref)} ${v.ref?.$type}`);
        else walk(v as AstNode);
    }
  };
  walk(root);
  return lines;
}

test('the bundles load the grammar that Langium loads', () => {
  const ours = told(loadGrammarFromJson(json()));
  expect(ours.length).toBeGreaterThan(1000);
  expect(ours.filter((l) => l.includes(' -> ')).length).toBeGreaterThan(100);
  expect(ours.filter((l) => l.endsWith('undefined'))).toEqual([]);
  expect(ours).toEqual(told(langiumsLoader(json())));
  expect(ours).toEqual(told(PaintplanGrammar()));
});
