/** Figures with their units, turned into the plan's own units. */
import type { AstNode } from 'langium';
import type { Figure } from '../../generated/ast.ts';
import { filmWords } from '../materials/film-words.ts';
import { type Family, type FamilyName, families } from '../syntax/families.ts';
import { type At, type Context, placeOf, problem, replaceFix } from './context.ts';
import type { Measure, NameUse, Place } from './plan.ts';

/** One spelling for each unit: both micro signs, both degree signs, spaces inside. */
const spelt = (unit: string): string => unit.replace('\u03bc', 'µ').replace('º', '°').replace(/\s+/g, '');

/** A number as written, with the message that shows the right form where it is written otherwise. */
export function numberOf(context: Context, text: string, place: Place): number | undefined {
  const plain = text.replace('\u2212', '-');
  if (plain.includes(',')) {
    const right = plain.replace(',', '.');
    problem(context, place, `Decimals are written with a point: ${right}.`, [
      replaceFix(`Write ${right}`, place, right),
    ]);
    return Number(right);
  }
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

export function measure(
  context: Context,
  figure: Figure | undefined,
  where: At,
  name: FamilyName,
): Measure | undefined {
  if (!figure?.low) return undefined;
  const family: Family = families[name];
  const place = placeOf(figure, where);
  const low = numberOf(context, figure.low, { ...place, end: place.start + figure.low.length });
  let high = figure.high === undefined ? low : numberOf(context, figure.high, place);
  if (figure.wrong !== undefined) {
    const end = figure.wrong.replace(/^[-+\u2212\u2013\u2014\s]+/, '');
    const tail = figure.unit ? ` ${figure.unit}` : '';
    problem(context, place, `A range is written ${figure.low}..${end}${tail}.`, [
      replaceFix(`Write ${figure.low}..${end}${tail}`, place, `${figure.low}..${end}${tail}`),
    ]);
    high = Number(end.replace(',', '.'));
  }
  if (low === undefined || high === undefined) return undefined;
  let unit = figure.unit === undefined ? undefined : spelt(figure.unit);
  if (unit === undefined && family.usual !== undefined) {
    problem(context, place, `This needs a unit: ${words(figure)} ${family.usual}.`, [
      replaceFix(`Write ${words(figure)} ${family.usual}`, place, `${words(figure)} ${family.usual}`),
    ]);
    unit = family.usual;
  } else if (unit !== undefined && !Object.hasOwn(family.units, unit)) {
    const may = Object.keys(family.units);
    problem(
      context,
      place,
      family.usual === undefined
        ? `No unit belongs here: write ${words(figure)}.`
        : `‘${figure.unit}’ does not measure this; write ${[...new Set(may)].slice(0, 6).join(', ')}.`,
    );
    return undefined;
  }
  const convert = (v: number) =>
    family.convert && unit !== undefined
      ? family.convert(v, unit)
      : v * (unit === undefined ? 1 : (family.units[unit] as number));
  const [a, b] = [convert(low), convert(high)];
  if (a > b && figure.wrong === undefined) {
    const right = `${figure.high ?? figure.wrong}..${figure.low}${figure.unit ? ` ${figure.unit}` : ''}`;
    problem(context, place, 'A range goes from the smaller figure to the larger.', [
      replaceFix(`Write ${right}`, place, right),
    ]);
  }
  return {
    value: {
      low: Math.min(a, b),
      likely: likely(Math.min(a, b), Math.max(a, b), name),
      high: Math.max(a, b),
    },
    given: a === b ? 'exact' : 'range',
    unit: family.unit,
    words: `${words(figure)}${figure.unit ? ` ${spelt(figure.unit)}` : ''}`,
    place,
  };
}

// a film is judged by its ratio: the middle of 5..20 µm is 10
const likely = (low: number, high: number, name: FamilyName): number =>
  name === 'film' && low > 0 ? Math.sqrt(low * high) : (low + high) / 2;

const words = (f: Figure): string => (f.high === undefined ? f.low : `${f.low}..${f.high}`);

/** A painter's word for a film; reports words it does not know. */
export function filmWord(context: Context, use: NameUse | undefined): Measure | undefined {
  if (!use) return undefined;
  const value = Object.hasOwn(filmWords, use.name) ? filmWords[use.name] : undefined;
  if (!value) {
    const [first, last] = [Object.keys(filmWords).slice(0, -1), Object.keys(filmWords).at(-1)];
    problem(
      context,
      use.place,
      `‘${use.name}’ is no film: write a thickness such as 8 µm, or a word: ${first.join(', ')} or ${last}.`,
      Object.entries(filmWords).map(([word, { low, high }]) =>
        replaceFix(`Write ${word} (${low} to ${high} µm)`, use.place, word),
      ),
    );
    return undefined;
  }
  return { value, given: 'word', unit: 'µm', words: use.name, place: use.place };
}

/** A thickness that nobody knows: what stands in its place is a default to be flagged. */
export function unknownMeasure(node: AstNode, where: At): Measure {
  const place = placeOf(node, where);
  return {
    value: { low: 0, likely: 0, high: 0 },
    given: 'unknown',
    unit: 'µm',
    words: 'unknown',
    place: { ...place, start: place.end - 'unknown'.length },
  };
}
