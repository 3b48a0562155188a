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

/** Glazes that each mix from names nothing declares: two names a layer, all different. */
export const unknownNames = (count: number): string =>
  HEAD +
  Array.from(
    { length: count / 2 },
    (_, i) =>
      `glaze u${i} { on sky colour 2 bluish${i} + 1 earthen${i} film 8 µm note "as it was, and so it stays" }\n`,
  ).join('');

/** Glazes over everything, as many as fill so many bytes. */
export function glazesOver(bytes: number): string {
  const one = (i: number): string => `glaze a${i} { colour 2 blue + 1 earth film ${3 + (i % 9)} µm }\n`;
  return HEAD + Array.from({ length: Math.round(bytes / one(1000).length) }, (_, i) => one(i)).join('');
}

/** Each mix made of the one before, and a layer of the last. */
export const chainedMixes = (count: number): string =>
  `${HEAD}mix step0 = 1 white + 1 blue\n${Array.from(
    { length: count },
    (_, i) => `mix step${i + 1} = ${1 + (i % 3)} step${i} + 1 earth\n`,
  ).join('')}layer last { on sky  colour step${count} }\n`;

/** Every one of so many layers on every one of so many areas. */
export const areasAndLayers = (areas: number, layers: number): string =>
  `plan "Bench"\nsupport linen 40 x 50 cm\n${Array.from({ length: areas }, (_, i) => `area part${i}\n`).join(
    '',
  )}paint blue = PB29 in linseed\npaint earth = PBr7 burnt-sienna in linseed\nground priming { material acrylic }\n${Array.from(
    { length: layers },
    (_, i) => `glaze g${i} { colour 2 blue + 1 earth film ${3 + (i % 9)} µm }\n`,
  ).join('')}`;

/** Texts that cost much for their size, with the count at which a key must still go unnoticed. */
export const HEAVY: Readonly<
  Record<string, { readonly make: (count: number) => string; readonly count: number }>
> = {
  'unknown names': { make: unknownNames, count: 20_000 },
  'glazes over everything': { make: glazesOver, count: 336_000 },
  'mixes of mixes': { make: chainedMixes, count: 5000 },
};

/** Layers of which nothing is said but their names. */
export const emptyLayers = (count: number): string =>
  `plan "Bench"\n${Array.from({ length: count }, (_, i) => `varnish v${i} { }\n`).join('')}`;
