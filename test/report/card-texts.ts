/** Plans whose cards are hard to bring onto one side, by what is hard. */
import { readFileSync } from 'node:fs';
import { plans } from '../examples/shown.ts';

const head = 'plan "Hard"\nsupport linen 60 x 80 cm\n';
const many = (n: number, line: (i: number) => string) =>
  Array.from({ length: n }, (_, i) => line(i)).join('');

/** One mixture of forty paints. */
export const fortyPaints = `${head}${many(40, (i) => `paint colour-number-${i} = ${i % 2 ? 'PW6' : 'PB29'} in linseed\n`)}layer all { colour ${Array.from({ length: 40 }, (_, i) => `${i + 1} colour-number-${i}`).join(' + ')} }\n`;

/** Sixty areas, all painted on one day. */
export const sixtyLayers = `${head}${many(60, (i) => `area place-${i} 1 %\n`)}${many(60, (i) => `layer lay-${i} { on place-${i}   colour ${i + 1} PW6 + 1 PB29   medium 20 % stand-oil   note "place ${i} is laid from the edge inwards" }\n`)}`;

/** As many poisons as a palette may hold, in one film. */
export const poisons = `${head}layer all { colour PW1 + PY35 + PY34 + PR106 + PB28 + PY53 + PBr8 + PG7 + PY42 + PG21 medium 50 % turpentine prepare abrade with sandpaper }\nglaze over { colour PW1 + PR108 + PY36   prepare wipe with white-spirit   medium 30 % alkyd }\n`;

const long = 'an-area-whose-name-goes-on-'.repeat(8);
/** Names and notes longer than anybody writes, and markup in them. */
export const wordy = `plan "${'<script>alert(1)</script> & a title without end '.repeat(20)}"\nsupport linen 60 x 80 cm\narea ${long}a 50 %\narea ${long}b 50 %\nlayer ${long}c { colour PW6   note "${'</style><b>and so on '.repeat(300)}" }\n`;

/** Broad letters, and letters of a script that fill a square. */
const broad = `${head}area ${'W'.repeat(30)} 100 %\npaint ${'M'.repeat(40)} = PW6 in linseed\n${many(8, (i) => `layer ${'W'.repeat(20)}-${i} { colour ${'M'.repeat(40)}   note "${'WOMEN MEMBRANES '.repeat(20)}${'絵の具を薄く塗る'.repeat(20)}" }\n`)}`;

export const cardTexts: readonly (readonly [string, string])[] = [
  ...plans.map((p) => [p, readFileSync(p, 'utf8')] as const).filter(([, text]) => /^plan "/m.test(text)),
  ['forty paints', fortyPaints],
  ['sixty layers on one day', sixtyLayers],
  ['poisons', poisons],
  ['long names', wordy],
  ['broad letters', broad],
];
