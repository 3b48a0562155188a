/** Texts of a wanted size for the benches: plans of many layers, and the same amount of JSON and YAML for the peers. */

const HEAD = `plan "Bench"
support linen 40 x 50 cm
area sky 50 %
area land 50 %
paint white = PW6 in linseed
paint blue = PB29 in linseed
paint earth = PBr7 burnt-sienna in linseed
medium rich = 20 % odourless-spirit + 80 % stand-oil
ground priming { material acrylic }
`;

const layer = (i: number) => `glaze g${i} {
  on ${i % 2 === 0 ? 'sky' : 'land'}
  prepare oil-out with stand-oil
  colour 2 blue + 1 earth
  medium ${50 + (i % 30)} % rich
  film ${3 + (i % 9)} µm
}
`;

export const layersOf = (count: number): string =>
  HEAD + Array.from({ length: count }, (_, i) => layer(i)).join('');

export function planOf(bytes: number): string {
  const each = layer(100).length + 1;
  return layersOf(Math.max(1, Math.round((bytes - HEAD.length) / each)));
}

const record = (i: number) => ({
  name: `g${i}`,
  on: ['sky'],
  amounts: { blue: 2, earth: 1 },
  medium: 50 + (i % 30),
  film: 3 + (i % 9),
});

export function jsonOf(bytes: number): string {
  const list: object[] = [];
  for (let size = 0, i = 0; size < bytes; i++) {
    list.push(record(i));
    size += JSON.stringify(record(i), null, 1).length + 2;
  }
  return JSON.stringify(list, null, 1);
}

export function yamlOf(bytes: number): string {
  let text = '';
  for (let i = 0; text.length < bytes; i++)
    text += `- name: g${i}\n  on: [sky]\n  amounts:\n    blue: 2\n    earth: 1\n  medium: ${50 + (i % 30)}\n  film: ${3 + (i % 9)}\n`;
  return text;
}
