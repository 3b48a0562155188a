/** What was expected where a parse stopped, in a painter's words, at the end of the word before. */
import { binder } from '../materials/catalogue.ts';
import { nameFault } from './name-fault.ts';
import type { Stop, SyntaxProblem } from './problem.ts';
import { isUnit } from './terminals.ts';
import { blockOf, declarationWord, fieldWord, isJoining, isNameable, isReserved } from './words.ts';

const isCode = (text: string) => /^[NPS](?:B[kK]|B[rR]|[BGMORVWY])\d+(?::\d+)?$/.test(text);
const isNumber = (text: string) => /^[-+\u2212]?[\d.]/.test(text);
const isName = (text: string) =>
  /^[^\s\d"#{}()=+,:%]+$/.test(text) && (!isReserved(text) || isNameable(text));
const isAmountWord = (text: string) => isNumber(text) || text === '%' || text === 'g' || text === 'ml';

const LISTS = new Set(['on', 'wipe-out', 'group']);
const FORMULAS: Record<string, string> = {
  paint: 'pigment',
  medium: 'oil, resin, solvent or medium',
  mix: 'paint',
  colour: 'paint or mix',
  color: 'paint or mix',
};
const NAMED = new Set(['area', 'group', 'pigment', 'paint', 'medium', 'mix']);
const QUOTED = new Set(['plan', 'record', 'use', 'note', 'evidence']);

const aPart = (first: string) =>
  first === 'medium' ? 'an oil, a resin, a solvent or a medium' : `a ${FORMULAS[first] ?? 'part'}`;

function afterJoint(joint: string, first: string): string | undefined {
  switch (joint) {
    case '+':
      return `another ${FORMULAS[first] ?? 'part'}`;
    case ',':
      return first === 'hazard' ? 'another hazard' : 'another area';
    case '=':
      return first === 'group'
        ? 'areas, for instance ‘= sky, water’'
        : first === 'paint'
          ? 'pigments and their binder, for instance ‘= 9 PW6 + 1 PY43 in linseed’'
          : aPart(first);
    case 'in':
      return first === 'paint' ? 'a binder, for instance ‘in linseed’' : 'an area';
    case 'with':
      return 'what it is prepared with, for instance ‘with walnut’';
    case 'because':
      return 'the reason in quotes';
    case 'like':
      return 'a pigment of the catalogue, for instance ‘like PY43’';
    case 'except':
      return 'areas';
    case 'tube':
      return 'what it holds, for instance ‘tube 40 ml’';
    case 'price':
      return 'what a tube costs, for instance ‘price 12.50 EUR’';
    case 'within':
      return 'how far it may be off, a ΔE00 such as 4';
    case 'at':
      return 'a film, for instance ‘at 20 µm’';
    case 'per':
      return 'hour or year';
    case '..':
      return 'the larger figure';
    default:
      return undefined;
  }
}

/** `declares` tells `medium lean = …` from the field `medium 20 % lean`. */
export function problemOf(stop: Stop, text: string, base: number, declares: boolean): SyntaxProblem {
  const first = /[^\s={}"]+/.exec(text)?.[0] ?? '';
  const field = fieldWord('layer', first) ?? fieldWord('studio', first) ?? fieldWord('pigment', first);
  const own = declares ? declarationWord(first) : field;
  const { token, before } = stop;
  const hint = own ? `${own.takes}, for instance ‘${own.example}’` : 'something else';
  const ended =
    token === '' || token === '}' || token === '{' || /[\r\n]/.test(text.slice(stop.beforeEnd, stop.start));
  const place = { start: base + stop.beforeEnd, end: base + stop.beforeEnd };
  const here = { start: base + stop.start, end: base + stop.end };
  const after = (what: string, insert?: string): SyntaxProblem => ({
    message: `After ‘${short(before)}’ I expected ${what}.`,
    ...place,
    ...(insert === undefined
      ? {}
      : { fixes: [{ title: `Add${insert.startsWith(' ') ? '' : ' '}${insert}`, ...place, text: insert }] }),
  });
  const said = text.slice(0, stop.beforeEnd);
  const wantsName =
    (before === first && declares && (NAMED.has(first) || blockOf(first) !== undefined)) ||
    before === ',' ||
    before === 'except' ||
    before === 'on' ||
    before === 'wipe-out' ||
    (before === 'in' && first !== 'paint');

  const strange = notNameable(stop, text, first, !ended && wantsName);
  if (strange) return { message: strange.message, start: base + strange.start, end: base + strange.end };
  if (!ended && wantsName && isCode(token))
    return { message: `‘${token}’ is a Colour Index code; what you declare has a name of its own.`, ...here };
  const fraction = fractionOf(stop, text, base);
  if (fraction) return fraction;
  if (stop.unreadable)
    return {
      message: `I cannot read ‘${short(token)}’ here.`,
      ...here,
      fixes: [{ title: 'Remove it', ...here, text: '' }],
    };
  const joint = before === first ? undefined : afterJoint(before, first);
  if (joint) return after(joint);
  if (QUOTED.has(first) && before === first && !ended && !/^["“]/.test(token))
    return unquoted(text, stop, base, first);
  if (before === first) return after(hint);
  if (declares && (FORMULAS[first] || first === 'group') && !said.includes('=') && !isReserved(before))
    return after(`=, for instance ‘${own?.example}’`, ' =');
  if (declares && first === 'paint' && !/\bin\s/.test(said) && ended)
    return (
      binderMissing(text, stop, base) ?? after('in and a binder, for instance ‘in linseed’', ' in linseed')
    );
  if (FORMULAS[first] && (declares || first !== 'medium')) {
    if (isAmountWord(before) && !isName(token)) return after(aPart(first));
    if (
      !ended &&
      !isAmountWord(before) &&
      !isJoining(before) &&
      (isNumber(token) || isName(token) || isCode(token))
    )
      return { ...after(`+ before ‘${short(token)}’`, ' +') };
  }
  if (!declares && first === 'medium' && isAmountWord(before))
    return after('the medium it is a share of, for instance ‘medium 40 % rich’');
  if ((LISTS.has(first) || before === 'except') && !ended && isName(token))
    return after(`a comma before ‘${token}’`, ',');
  if (first === 'allow' && /^["“]/.test(token)) return after('because', ' because');
  if (declares && blockOf(first) && !text.includes('{'))
    return after(`its fields in braces, for instance ‘${own?.example}’`);
  if (ended) return after(hint);
  return { message: `‘${short(token)}’ does not fit here: ‘${short(first)}’ takes ${hint}.`, ...here };
}

/**
 * Where a name is wanted, or a word stands that would be a unit or the x of a size: why it cannot be a name. After a
 * figure a unit may be meant (in a formula grams or millilitres only), and between two figures an x.
 */
function notNameable(
  { token, before, beforeEnd, start }: Stop,
  text: string,
  first: string,
  wanted: boolean,
): { readonly message: string; readonly start: number; readonly end: number } | undefined {
  const inFormula = FORMULAS[first] !== undefined;
  const of = (word: string, at: number) => {
    const message = /^[\p{L}_]/u.test(word) ? nameFault(word, inFormula) : undefined;
    return message === undefined ? undefined : { message, start: at, end: at + word.length };
  };
  if (token === 'x' && (!isNumber(before) || inFormula))
    return of(/^x[\p{L}\d_-]*/u.exec(text.slice(start))?.[0] ?? token, start);
  if (wanted || (inFormula && isUnit(token) && !isNumber(before))) return of(token, start);
  return inFormula && isUnit(before) && !isAmountWord(before)
    ? of(before, beforeEnd - before.length)
    : undefined;
}

const SIGNS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
};

/** `1/2`, `½` or `1½`, which are written as decimals; the sign alone is read as a unit, so the parse stops after it. */
function fractionOf(
  { before, beforeEnd, start: stopped }: Stop,
  text: string,
  base: number,
): SyntaxProblem | undefined {
  const touching = beforeEnd === stopped ? before : '';
  const sign = /^(\d*)([½¼¾⅓⅔])$/.exec(before);
  const below = /^\/(\d+)/.exec(text.slice(stopped, stopped + 12));
  const value = sign
    ? Number(sign[1]) + (SIGNS[sign[2] as string] as number)
    : below && /^\d+$/.test(touching) && Number(below[1]) > 0
      ? Number(touching) / Number(below[1])
      : undefined;
  if (value === undefined) return undefined;
  const start = beforeEnd - before.length;
  const end = sign ? beforeEnd : stopped + (below?.[0].length ?? 0);
  const place = { start: base + start, end: base + end };
  const right = String(Number(value.toFixed(3)));
  return {
    message: `Fractions are written with a point: ${right}.`,
    ...place,
    fixes: [{ title: `Write ${right}`, ...place, text: right }],
  };
}

/** The last word of `paint x = PG18 linseed` is a binder: what is missing stands before it. */
function binderMissing(text: string, stop: Stop, base: number): SyntaxProblem | undefined {
  if (!binder(stop.before)) return undefined;
  const before = text.slice(0, stop.beforeEnd - stop.before.length).trimEnd();
  const place = { start: base + before.length, end: base + before.length };
  const last = /\S+$/.exec(before)?.[0] ?? '';
  return {
    message: `After ‘${short(last)}’ I expected in before ‘${stop.before}’.`,
    ...place,
    fixes: [{ title: 'Add in', ...place, text: ' in' }],
  };
}

function unquoted(text: string, stop: Stop, base: number, first: string): SyntaxProblem {
  const rest = /^[^\r\n]*/.exec(text.slice(stop.start))?.[0].trimEnd() ?? '';
  const place = { start: base + stop.start, end: base + stop.start + rest.length };
  return {
    message: `The words after ‘${first}’ stand in quotes: ${first} "…".`,
    ...place,
    fixes: [{ title: 'Put them in quotes', ...place, text: `"${rest.replace(/["“”]/g, '')}"` }],
  };
}

/** One line of a text, not too much of it. */
export const short = (text: string): string => {
  const line = text.split(/[\r\n]/, 1)[0] ?? '';
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
};
