/** What may be written at an offset: fields of this block, names in scope, pigments and materials by role, rule ids. */
import { allPigments, lookupPigment } from '../materials/catalogue.ts';
import { filmWords } from '../materials/film-words.ts';
import type { Pigment, Transparency } from '../materials/types.ts';
import { cataloguedFor, declaredFor } from '../plan/naming.ts';
import type { NameRole, Place, Plan } from '../plan/plan.ts';
import { rules } from '../rules/index.ts';
import {
  fileClauses,
  groupClauses,
  mediumClauses,
  mixClauses,
  paintClauses,
  pigmentClauses,
  sampleClauses,
  supportClauses,
  targetClauses,
} from '../syntax/clauses.ts';
import type { Row, ValueKind } from '../syntax/fields.ts';
import { type Chunk, scan } from '../syntax/scan.ts';
import { CODE_PATTERN, LETTER } from '../syntax/terminals.ts';
import {
  type Block,
  blockOf,
  declarationWords,
  type FieldWord,
  fieldsOf,
  fieldWord,
  isLayerWord,
  WORDED,
} from '../syntax/words.ts';
import { describeMaterial, describePigment } from './describe.ts';
import { described } from './hover.ts';

export type ItemKind =
  | 'word'
  | 'field'
  | 'paint'
  | 'mix'
  | 'medium'
  | 'pigment'
  | 'material'
  | 'area'
  | 'layer'
  | 'rule'
  | 'value';

export interface Item {
  readonly label: string;
  readonly kind: ItemKind;
  readonly detail?: string;
  /** text to insert where it differs from the label; with `snippet`, in the notation of the protocol */
  readonly insert?: string;
  readonly snippet?: boolean;
  /** order among the items: lower first */
  readonly rank: number;
}

export interface Completion {
  readonly items: readonly Item[];
  /** what the chosen item replaces */
  readonly place: Place;
}

const WORD_END = new RegExp(`[${LETTER}\\d:-]*$`);
const CODE_BEFORE = new RegExp(`(${CODE_PATTERN})\\s+$`);

const SNIPPETS: Record<string, string> = {
  plan: 'plan "${1:Title}"',
  record: 'record "${1:Title}"',
  area: 'area ${1:name} ${2:20} %',
  group: 'group ${1:name} = ${2:areas}',
  paint: 'paint ${1:name} = ${2:PW6} in ${3:linseed}',
  medium: 'medium ${1:lean} = ${2:60} % ${3:odourless-spirit} + ${4:40} % ${5:linseed}',
  mix: 'mix ${1:name} = ${2:2} ${3:paint} + ${4:1} ${5:paint}',
  support: 'support ${1:linen} ${2:40} x ${3:50} cm',
  target: 'target ${1:area} lab(${2:60 0 10}) within ${3:4}',
  studio:
    'studio {\n  temperature ${1:18} °C\n  room ${2:40} m³\n  air-changes ${3:2} per hour\n  session ${4:3} hours\n}',
  ground: 'ground ${1:priming} {\n  material ${2:acrylic}\n  wait ${3:14} days\n}',
  varnish: 'varnish ${1:final} {\n  resin ${2:damar}\n  after ${3:9} months\n}',
  sample: 'sample ${1:S1} in ${2:area} {\n  ${3:layer} ${4:10} µm\n}',
};
const LAYER_SNIPPET = (word: string) =>
  `${word} \${1:name} {\n  on \${2:area}\n  colour \${3:paint}\n  medium \${4:20} % \${5:medium}\n  film \${6:${word === 'glaze' || word === 'scumble' ? '8 µm' : '20 µm'}}\n}`;

const CLEARNESS: readonly Transparency[] = ['transparent', 'semi-transparent', 'semi-opaque', 'opaque'];

/** Pigments of the catalogue; in a glaze the transparent ones first. */
function pigments(inGlaze: boolean, rank: number): Item[] {
  return allPigments().map((p: Pigment) => ({
    label: p.id,
    kind: 'pigment',
    detail: `${p.names[0]}, ${p.transparency.value}`,
    rank: rank + (inGlaze ? CLEARNESS.indexOf(p.transparency.value) : 0),
  }));
}

/** What a declared name is, as an item. */
function declaredItem(plan: Plan, label: string): Pick<Item, 'kind' | 'detail' | 'rank'> {
  const { paints, mixes, mediums, pigments: own } = plan.visible;
  if (paints.has(label)) return { kind: 'paint', rank: 1 };
  if (mixes.has(label)) return { kind: 'mix', rank: 1 };
  if (mediums.has(label)) return { kind: 'medium', rank: 1 };
  if (own.has(label)) return { kind: 'pigment', rank: 1 };
  return plan.groups.some((g) => g.name === label)
    ? { kind: 'area', detail: 'group', rank: 2 }
    : { kind: 'area', rank: 1 };
}

/** Names that may stand in a role: what the plan declares, then the catalogue. */
function named(plan: Plan, role: NameRole, inGlaze = false): Item[] {
  if (role === 'rule') return rules.map((r) => ({ label: r.id, kind: 'rule', detail: r.title, rank: 1 }));
  if (role === 'layer') return declaredFor(plan, role).map((label) => ({ label, kind: 'layer', rank: 1 }));
  const own = declaredFor(plan, role).map((label): Item => ({ label, ...declaredItem(plan, label) }));
  const materials = cataloguedFor(role).map((label): Item => ({ label, kind: 'material', rank: 2 }));
  const codes =
    role === 'paint'
      ? [
          ...declaredFor(plan, 'pigment').map((label): Item => ({ label, kind: 'pigment', rank: 2 })),
          ...pigments(inGlaze, 3),
        ]
      : role === 'pigment'
        ? pigments(inGlaze, 2)
        : [];
  return [...own, ...materials, ...codes];
}

const word = (label: string, insert?: string): Item => ({
  label,
  kind: 'word',
  rank: 0,
  ...(insert ? { insert, snippet: true } : {}),
});

/** What is asked for: the value's row, what stands between its word and the cursor, and the joint just before. */
interface Asked {
  readonly plan: Plan;
  readonly row: Row;
  readonly said: string;
  readonly joint?: string;
  readonly inGlaze: boolean;
}

const chosen = ({ row, said }: Asked): Item[] =>
  said.trim() && row.value !== 'choices'
    ? []
    : (row.choices ?? []).map((label) => ({ label, kind: 'value', rank: 1 }));
const inFormula = ({ plan, row, inGlaze }: Asked): Item[] =>
  named(plan, row.of === 'paint' ? 'pigment' : row.of === 'medium' ? 'liquid' : 'paint', inGlaze);
const areasLeft = ({ plan, said }: Asked): Item[] => {
  const there = new Set(said.split(/[\s,]+/));
  return named(plan, 'area').filter((a) => !there.has(a.label));
};
const material = ({ plan, row, said }: Asked): Item[] =>
  said.trim() && row.role === 'support' ? [] : named(plan, row.role ?? 'ground');
const nothing = (): Item[] => [];

/** What may stand for a value of each kind. */
const OFFERS: { readonly [K in ValueKind]: (asked: Asked) => Item[] } = {
  figure: nothing,
  day: nothing,
  years: nothing,
  text: nothing,
  note: nothing,
  light: nothing,
  price: nothing,
  colour: nothing,
  unknown: nothing,
  film: ({ plan, said, joint }) =>
    said.trim()
      ? joint === 'in'
        ? named(plan, 'area')
        : /^\s*to\s+$/.test(said)
          ? [word('lightness')]
          : []
      : [
          word('to lightness', 'to lightness $1'),
          ...Object.entries(filmWords).map(
            ([label, f]): Item => ({
              label,
              kind: 'value',
              detail: `${f.low}–${f.high} µm`,
              rank: 1,
            }),
          ),
        ],
  choice: chosen,
  choices: chosen,
  area: ({ plan }) => named(plan, 'area'),
  areas: areasLeft,
  extent: (asked) =>
    /\S\s+$/.test(asked.said) && !/(?:,|except)\s+$/.test(asked.said)
      ? [word('except'), ...areasLeft(asked)]
      : areasLeft(asked),
  preparation: (asked) =>
    asked.joint === 'with' ? named(asked.plan, 'agent') : asked.said.trim() ? [word('with')] : chosen(asked),
  formula: inFormula,
  layerColour: inFormula,
  ingredient: inFormula,
  // only a tint names a white, after its parts
  swatch: (asked) => (/^\s*\d/.test(asked.said) ? inFormula(asked) : []),
  measured: ({ plan, joint }) => (joint === 'in' ? named(plan, 'area') : []),
  liquid: ({ plan }) => named(plan, 'medium'),
  material,
  allow: ({ plan, said }) => (/\S\s+$/.test(said) ? [word('because', 'because "$1"')] : named(plan, 'rule')),
};

/** What a declaration asks for outside its braces: a row, or words that go on with it. */
function clauseAt(declaration: string, said: string, joint: string | undefined): Row | readonly Item[] {
  const opened = said.includes('=');
  switch (declaration) {
    case 'group':
      return opened ? groupClauses.members : [];
    case 'mix':
      return opened ? mixClauses.formula : [];
    case 'medium':
      return opened ? mediumClauses.formula : [];
    case 'paint':
      if (joint === 'in') return paintClauses.binder;
      if (/\sin\s+\S+\s/.test(said)) return ['hand-ground', 'tube', 'price'].map((w) => word(w));
      return opened ? paintClauses.formula : [];
    case 'pigment':
      return joint === 'like' ? pigmentClauses.like : said.trim() ? [word('like')] : [];
    case 'support':
      return supportClauses.material;
    case 'target':
      return targetClauses.area;
    case 'sample':
      return joint === 'in' ? sampleClauses.area : [];
    case 'allow':
      return fileClauses.allow;
    default:
      return [];
  }
}

/** After the word of a field or a declaration: what its value may be. `said` is what stands between word and cursor. */
function values(plan: Plan, first: string, said: string, chunk: Chunk, block: Block | undefined): Item[] {
  const joint = /(?:^|\s)(in|with|except|like|within|because|at)\s+$/.exec(said)?.[1];
  if (joint === 'because' || joint === 'within' || joint === 'at') return [];
  if (block === 'sample') return named(plan, 'layer');
  const row = block ? fieldWord(block, first) : clauseAt(first, said, joint);
  if (!row) return [];
  if (!('value' in row)) return [...row];
  const items = OFFERS[row.value]({ plan, row, said, joint, inGlaze: chunk.word === 'glaze' });
  return first === 'paint' && !block && joint !== 'in' ? [...items, word('in')] : items;
}

const fieldItem = (f: FieldWord, rank: number): Item => ({
  label: f.word,
  kind: 'field',
  detail: f.about,
  insert: `${f.word} `,
  rank,
});

function varieties(said: string): Item[] {
  const code = CODE_BEFORE.exec(said)?.[1];
  const lookup = code ? lookupPigment(code) : undefined;
  const choices =
    lookup?.kind === 'needs-variety'
      ? lookup.choices
      : lookup?.kind === 'found'
        ? allPigments().filter((p) => p.code === code && p.variety)
        : [];
  return choices.flatMap((p) =>
    p.variety ? [{ label: p.variety, kind: 'pigment' as const, detail: p.names[0], rank: 0 }] : [],
  );
}

function declarations(plan: Plan): Item[] {
  return declarationWords
    .filter(
      (d) => !(plan.kind === 'record' && d.only === 'plan') && !(plan.kind === 'plan' && d.only === 'record'),
    )
    .map((d, i) => {
      const snippet = isLayerWord(d.word) && !SNIPPETS[d.word] ? LAYER_SNIPPET(d.word) : SNIPPETS[d.word];
      return {
        label: d.word,
        kind: 'word',
        detail: d.about,
        insert: snippet ?? `${d.word} `,
        snippet: snippet !== undefined,
        rank: i,
      };
    });
}

function fields(plan: Plan, block: Block, chunk: Chunk, text: string, offset: number): Item[] {
  if (block === 'sample') return named(plan, 'layer');
  const there = new Set(
    chunk.fields.filter((f) => f !== offset).map((f) => /^[a-z-]+/.exec(text.slice(f, f + 20))?.[0]),
  );
  return fieldsOf(block)
    .filter(
      (f) =>
        (f.repeatable || !there.has(f.word)) &&
        !(plan.kind === 'record' && f.only === 'plan') &&
        !(plan.kind !== 'record' && f.only === 'record'),
    )
    .map(fieldItem);
}

/** Empty where nothing can be offered: in strings, comments, numbers. */
export function completion(plan: Plan, text: string, offset: number): Completion {
  const at = Math.max(0, Math.min(offset, text.length));
  const lineStart = Math.max(text.lastIndexOf('\n', at - 1), text.lastIndexOf('\r', at - 1)) + 1;
  const line = text.slice(lineStart, at);
  const partial = WORD_END.exec(line)?.[0] ?? '';
  const place: Place = { uri: plan.uri, start: at - partial.length, end: at };
  const none: Completion = { items: [], place };
  const plain = line.replace(/"[^"]*"/g, '""');
  if (/\/\/|"[^"]*$/.test(plain.replaceAll('""', '')) || /^\d/.test(partial)) return none;
  const chunk = chunkAt(scan(text), place.start);
  const firstOnLine = line.slice(0, line.length - partial.length).trim() === '';
  if (!chunk) return { items: declarations(plan), place };
  const block =
    chunk.open !== undefined && chunk.open < at && (chunk.close === undefined || at <= chunk.close)
      ? blockOf(chunk.word)
      : undefined;
  if (!block) {
    if (firstOnLine) return { items: declarations(plan), place };
    const said = text.slice(chunk.start + chunk.word.length, place.start);
    const variety = varieties(said);
    return {
      items:
        variety.length > 0
          ? [...variety, ...values(plan, chunk.word, said, chunk, undefined)]
          : values(plan, chunk.word, said, chunk, undefined),
      place,
    };
  }
  const field = chunk.fields.filter((f) => f < place.start).at(-1);
  const afterBrace = field === undefined && text.slice((chunk.open as number) + 1, place.start).trim() === '';
  const goesOn =
    field !== undefined && /[+,]\s*$|\b(?:in|with|except)\s+$/.test(text.slice(field, place.start));
  if ((firstOnLine && !goesOn) || afterBrace)
    return { items: fields(plan, block, chunk, text, place.start), place };
  if (field === undefined)
    return block === 'sample' ? { items: fields(plan, block, chunk, text, place.start), place } : none;
  const first = /^[a-z-]+/.exec(text.slice(field, field + 20))?.[0] ?? '';
  const said = text.slice(field + first.length, place.start);
  // a single-line block: after three spaces another field may begin
  const next = /\s{2,}$/.test(said) && said.trim() ? fields(plan, block, chunk, text, place.start) : [];
  return { items: [...varieties(said), ...values(plan, first, said, chunk, block), ...next], place };
}

function chunkAt(chunks: readonly Chunk[], offset: number): Chunk | undefined {
  const before = chunks.filter((c) => c.start < offset).at(-1);
  // past a closed block, or on a later line than a plain declaration, something new begins
  return before && (before.close === undefined || offset <= before.close) ? before : undefined;
}

/** Words on an offered item, as Markdown, made only when one is looked at. */
export function itemDocumentation(kind: ItemKind, label: string): string | undefined {
  if (kind === 'pigment') {
    const [code = '', variety] = label.split(' ');
    const lookup = lookupPigment(code, variety);
    return lookup.kind === 'found' ? described(describePigment(lookup.pigment)) : undefined;
  }
  if (kind === 'material') return describeMaterial(label).map(described).join('\n\n---\n\n') || undefined;
  if (kind === 'rule') {
    const rule = rules.find((r) => r.id === label);
    return rule && `${rule.why}\n\n${rule.whatToDo}`;
  }
  const of =
    declarationWords.find((d) => d.word === label) ?? WORDED.flatMap(fieldsOf).find((f) => f.word === label);
  return of && `${of.about}\n\n\`${of.example}\``;
}
