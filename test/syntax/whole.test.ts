/** A valid text cut into declarations and parsed one by one says what it says parsed whole. */
import type { AstNode } from 'langium';
import { expect, test } from 'vitest';
import type { Model } from '../../language/generated/ast.ts';
import { parseChunk } from '../../language/src/syntax/chunk.ts';
import { parse } from '../../language/src/syntax/parser.ts';
import { scan, shapeOf } from '../../language/src/syntax/scan.ts';
import { samples } from '../plan/samples.ts';

const tree = (node: AstNode | undefined, base: number): unknown =>
  JSON.parse(
    JSON.stringify(node, function (this: { $cstNode?: { offset: number; end: number } }, key, value) {
      if (key === '$cstNode') return value ? [value.offset + base, value.end + base] : undefined;
      return key.startsWith('$') && key !== '$type' ? undefined : value;
    }),
  );

const ODD = [
  'area sky 60 % area sea 40 %  paint a = PB29 in linseed medium lean = 50 % turpentine + 50 % linseed',
  'mix o =\n5 a\n+ 2 b\n  target #c9a24a within 3\ntarget sky #ffffff\nmix n = a\ntarget sky #000000',
  'paint a = PBr7\nburnt-sienna in linseed\ngroup g = a,\nb\nglaze\nfirst\n{\nfilm thin\n}',
  'glaze a { note "{ area sky }" /* } */ film thin } // }\nglaze b {} ground c { medium 20 % lean medium lean }',
  'studio { light 150 lux 3000 hours per year light-source D65 temperature 18 °C }',
  'glaze a {\n  on light, dry\n  dry 2027-01-02\n  colour oil + dry\n}',
];

test.each(
  [...samples, ...ODD.map((text, i) => ({ name: `odd ${i}`, text }))].map((s) => [s.name, s.text] as const),
)('%s', (_, text) => {
  const whole = parse<Model>(text, 'Model');
  expect(whole?.parserErrors.map((e) => e.message)).toEqual([]);
  const chunks = scan(text).map((chunk) => {
    const parsed = parseChunk(text.slice(chunk.start, chunk.end), shapeOf(chunk));
    expect(parsed.problems).toEqual([]);
    return tree(parsed.declaration?.node, chunk.start);
  });
  expect(chunks).toEqual(whole?.value.declarations.map((d) => tree(d, 0)));
});
