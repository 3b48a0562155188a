/** A value of each kind as people read it, as JSON has it, and as two versions are compared. */
import type { ValueKind } from '../syntax/fields.ts';
import { formulaWords } from './formula-words.ts';
import type { AreaUse, FilmMeasure, Formula, Ingredient, Measure, Values } from './plan.ts';

/** A value as JSON holds it; null where it is said that nobody knows. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [name: string]: Json };

/** How one kind of value is shown. */
interface Shown<V> {
  /** as the text would have it, in its own units */
  readonly words: (value: V) => string;
  readonly json: (value: V) => Json;
  /** what counts when versions are compared, where that is not its JSON */
  readonly meant?: (value: V) => Json;
  /** the figures in it, in the order of the row's bounds */
  readonly figures?: (value: V) => readonly (Measure | undefined)[];
}

const names = (list: readonly { readonly name: string }[]) => list.map((x) => x.name);

const figure: Shown<Measure> = {
  words: (m) => m.words,
  json: (m) =>
    m.given === 'unknown' ? null : { ...m.value, unit: m.unit || null, given: m.given, words: m.words },
  meant: (m) => (m.given === 'unknown' ? null : { ...m.value }),
  figures: (m) => [m],
};

/** The areas that names stand for: a group is its areas. */
const reached = (list: readonly AreaUse[]): Json =>
  [...new Set(list.flatMap((a) => (a.known ? a.areas : [a.name])))].sort();

const ingredientWords = ({ name, variety }: Ingredient) => `${name}${variety ? ` ${variety.name}` : ''}`;

const formulaJson = ({ parts }: Formula): Json =>
  parts.map(({ amount, ingredient }) => ({
    amount: amount?.value ?? null,
    unit: amount?.kind ?? null,
    name: ingredient.name,
    variety: ingredient.variety?.name ?? null,
  }));

const film: Shown<FilmMeasure> = {
  words: figure.words,
  json: (m) =>
    m.effect
      ? { lightness: figure.json(m.effect.lightness), in: m.effect.in?.name ?? null, words: m.words }
      : figure.json(m),
  meant: (m) =>
    m.effect
      ? [{ ...m.effect.lightness.value }, m.effect.in ? [...m.effect.in.areas].sort() : null]
      : m.given === 'unknown'
        ? null
        : { ...m.value },
  figures: (m) => (m.effect ? [undefined, m.effect.lightness] : [m]),
};

const optional = (m: Measure | undefined): Json => (m ? figure.json(m) : null);
const optionalMeant = (m: Measure | undefined): Json => (m ? (figure.meant?.(m) ?? null) : null);
const spoken = (...words: readonly (string | undefined | false)[]) => words.filter(Boolean).join(' ');

/** Every kind of value there is in the tables of fields. */
export const shown: { readonly [K in ValueKind]: Shown<Values[K]> } = {
  figure,
  film,
  day: { words: (d) => d.iso, json: (d) => d.iso },
  years: {
    words: (y) => (y.from === y.to ? `${y.from}` : `${y.from}..${y.to}`),
    json: ({ from, to }) => ({ from, to }),
  },
  text: { words: (t) => t.text, json: (t) => t.text },
  note: { words: (t) => t, json: (t) => t },
  choice: { words: (c) => c.value, json: (c) => c.value },
  choices: {
    words: (list) => list.map((c) => c.value).join(', '),
    json: (list) => list.map((c) => c.value),
  },
  area: { words: (a) => a.name, json: (a) => a.name, meant: (a) => reached([a]) },
  areas: { words: (list) => names(list).join(', '), json: names, meant: reached },
  extent: {
    words: (e) => e.areas.join(', '),
    json: (e) => ({ on: names(e.on), except: names(e.except) }),
    meant: (e) => [...(e.areas.length > 0 ? e.areas : names([...e.on, ...e.except]))].sort(),
  },
  preparation: {
    words: (p) => spoken(p.method, p.agent && `with ${p.agent.name}`),
    json: (p) => ({ method: p.method ?? null, agent: p.agent?.name ?? null }),
  },
  formula: { words: formulaWords, json: formulaJson },
  layerColour: {
    words: (c) =>
      c.kind === 'formula' ? formulaWords(c.formula) : c.kind === 'value' ? c.value.css : 'unknown',
    json: (c) => (c.kind === 'formula' ? formulaJson(c.formula) : c.kind === 'value' ? c.value.css : null),
  },
  colour: { words: (c) => c.css, json: (c) => c.css },
  measured: {
    words: (m) => spoken(m.colour.css, m.in && `in ${m.in.name}`),
    json: (m) => ({ colour: m.colour.css, in: m.in?.name ?? null }),
    meant: (m) => [m.colour.css, m.in ? reached([m.in]) : null],
  },
  liquid: {
    words: (m) => spoken(m.share?.words, m.of?.name),
    json: (m) => ({ share: optional(m.share), of: m.of?.name ?? null }),
    meant: (m) => [optionalMeant(m.share), m.of?.name ?? null],
    figures: (m) => [m.share],
  },
  material: { words: (m) => m.name, json: (m) => (m.unknown ? null : m.name) },
  ingredient: { words: ingredientWords, json: ingredientWords },
  light: {
    words: (l) => spoken(l.lux.words, l.hoursPerYear && `${l.hoursPerYear.words} per year`),
    json: (l) => ({ lux: optional(l.lux), hoursPerYear: optional(l.hoursPerYear) }),
    meant: (l) => [optionalMeant(l.lux), optionalMeant(l.hoursPerYear)],
    figures: (l) => [l.lux, l.hoursPerYear],
  },
  price: {
    words: (p) => `${p.amount.words} ${p.currency}`,
    json: (p) => ({ amount: figure.json(p.amount), currency: p.currency }),
    meant: (p) => [optionalMeant(p.amount), p.currency],
    figures: (p) => [p.amount],
  },
  swatch: {
    words: (s) =>
      spoken(
        s.tint && `1:${s.tint.parts} ${ingredientWords(s.tint.white)}`,
        s.colour.css,
        s.film && `at ${s.film.words}`,
      ),
    json: (s) => ({
      colour: s.colour.css,
      film: optional(s.film),
      tint: s.tint ? { parts: s.tint.parts, white: ingredientWords(s.tint.white) } : null,
    }),
    meant: (s) => [
      s.colour.css,
      optionalMeant(s.film),
      s.tint ? [s.tint.parts, ingredientWords(s.tint.white)] : null,
    ],
    figures: (s) => [s.film],
  },
  allow: {
    words: (a) => spoken(a.rule, a.because !== undefined && `because ${a.because}`),
    json: (a) => ({ rule: a.rule, because: a.because ?? null }),
  },
  unknown: { words: () => 'unknown', json: () => null },
};
