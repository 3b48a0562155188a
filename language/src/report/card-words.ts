/** What a sitting card says of the trade: how to try a film, how thick it is laid, what to do when it goes wrong. */
import { filmWords } from '../materials/film-words.ts';
import { commonPractice } from '../materials/sources.ts';
import type { Source } from '../materials/types.ts';

interface Said {
  readonly text: string;
  readonly source: Source;
}

/** How it is tried, where it does not matter, whether something may be laid on a surface. */
export const TRIALS = {
  oil: {
    text: 'press a fingernail into the thickest place near an edge, then press a thumb there and turn it: no dent, no print, nothing slides. Else wait.',
    source: {
      text: 'memory (ASTM D1640, dry-through: a thumb pressed and turned leaves no mark); the nail is common practice',
      mark: 'memory',
    },
  },
  varnish: {
    text: 'press a fingernail into the thickest place: no dent. Roll a swab damp with the spirit of the varnish over a dark edge: it stays clean. Else wait some weeks more.',
    source: commonPractice('nail and swab before varnishing'),
  },
  ground: {
    text: 'lay the back of the hand on it: no longer cool, no wet shine.',
    source: commonPractice('a ground in water feels cold while water leaves it'),
  },
  tempera: {
    text: 'rub a dry fingertip over it: it stays clean.',
    source: commonPractice('egg, glue and gum films are tried with a dry finger'),
  },
  leaf: {
    text: 'stroke it with a soft dry brush: nothing lifts.',
    source: commonPractice('leaf is tried with the brush that takes off what is loose'),
  },
  today: {
    text: 'laid today: go on when its wet shine is gone.',
    source: commonPractice('coats of one day follow as the one before loses its wet shine'),
  },
} as const satisfies Record<string, Said>;

export type Trial = keyof typeof TRIALS;

/** What to do when a sitting goes wrong, a line each. */
export const REMEDIES = {
  beads: {
    text: 'it beads: wipe it off at once, rub the place lightly or oil it out to a breath, lay it again.',
    source: commonPractice(
      'glazes bead on a glossy film; abrasion or oiling out helps, and onion, potato or soap leave a film of their own',
    ),
  },
  beadsOnPoison: {
    text: 'it beads: wipe it off at once, oil the place out to a breath, lay it again. No rubbing down: there is poison beneath.',
    source: commonPractice('glazes bead on a glossy film; what holds poison is never rubbed down'),
  },
  varnishBeads: {
    text: 'it beads: stop, let it dry, and take the grease off with a cloth just damp with water before you go on.',
    source: commonPractice('varnish draws back from grease'),
  },
  sinks: {
    text: 'it sinks in and turns dull: leave it. Once it is dry, oil out the dull places alone, to a breath.',
    source: commonPractice('sunken places are oiled out when dry, and only they'),
  },
  setsEarly: {
    text: 'it drags or turns tacky: leave that place, brush no spirit into it. Lay less at a time and finish one place before the next.',
    source: commonPractice('a film that has begun to set is torn by the brush'),
  },
} as const satisfies Record<string, Said>;

export type Remedy = keyof typeof REMEDIES;

/** How a film of each word of the language is got; the thicknesses are those of the words. */
const HANDLING: Readonly<Record<string, string>> = {
  wash: 'thinned, then rubbed or wiped',
  veil: 'spread until all beneath shows',
  thin: 'brushed out well',
  full: 'as the brush leaves it',
  impasto: 'laid on and standing up',
};

/** A dry film of one coat, µm, in a painter's words: the word of the language and how it is laid. */
export function filmInWords(um: number): string {
  const known = Object.entries(filmWords);
  const [word, range] = known.find(([, { high }]) => um <= high) ?? known.at(-1)!;
  // between the brush's thickest and the least that stands up
  return um < range.low && word === 'impasto'
    ? 'thick, more than the brush leaves'
    : `${word}, ${HANDLING[word]}`;
}
