/** What may be written at an offset: fields of this block, names in scope, pigments and materials by role, rule ids. */
import { allPigments, lookupPigment, materialNames } from '../materials/catalogue.ts';
import { filmWords } from '../materials/film-words.ts';
import type { Pigment, Transparency } from '../materials/types.ts';
import type { Place, Plan } from '../plan/plan.ts';
import { rules } from '../rules/index.ts';
import { type Chunk, scan } from '../syntax/scan.ts';
import { CODE_PATTERN, LETTER } from '../syntax/terminals.ts';
import { type Block, blockOf, declarationWords, fieldsOf, isLayerWord, type Word } from '../syntax/words.ts';
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

const names = (list: Iterable<string>, kind: ItemKind, rank: number, detail?: string): Item[] =>
  [...list].map((label) => ({ label, kind, rank, detail }));

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

const areas = (plan: Plan): Item[] => [
  ...(plan.implicitArea
    ? []
    : names(
        plan.areas.map((a) => a.name),
        'area',
        1,
      )),
  ...names(
    plan.groups.map((g) => g.name),
    'area',
    2,
    'group',
  ),
];

const paints = (plan: Plan, inGlaze: boolean): Item[] => [
  ...names(plan.visible.paints.keys(), 'paint', 1),
  ...names(plan.visible.mixes.keys(), 'mix', 1),
  ...names(plan.visible.pigments.keys(), 'pigment', 2),
  ...pigments(inGlaze, 3),
];

const liquids = (plan: Plan): Item[] => [
  ...names(plan.visible.mediums.keys(), 'medium', 1),
  ...names(materialNames('medium'), 'material', 2),
];

const fieldItem = (f: Word, rank: number): Item => ({
  label: f.word,
  kind: 'field',
  detail: f.about,
  insert: `${f.word} `,
  rank,
});

/** After the word of a field or a declaration: what its value may be. `said` is what stands between word and cursor. */
function values(plan: Plan, word: string, said: string, chunk: Chunk): Item[] {
  const joint = /(?:^|\s)(in|with|except|like|within|because|at)\s+$/.exec(said)?.[1];
  const inGlaze = chunk.word === 'glaze';
  if (joint === 'because' || joint === 'within' || joint === 'at') return [];
  switch (word) {
    case 'on':
    case 'wipe-out': {
      const named = new Set(said.split(/[\s,]+/));
      const list = areas(plan).filter((a) => !named.has(a.label));
      return word === 'on' && /\S\s+$/.test(said) && !/(?:,|except)\s+$/.test(said)
        ? [{ label: 'except', kind: 'word', rank: 0 }, ...list]
        : list;
    }
    case 'target':
    case 'measured':
    case 'sample':
      return word !== 'target' && joint !== 'in'
        ? word === 'sample' && chunk.open !== undefined
          ? names(
              plan.layers.map((l) => l.name),
              'layer',
              1,
            )
          : []
        : areas(plan);
    case 'group':
      return said.includes('=') ? areas(plan) : [];
    case 'colour':
    case 'color':
    case 'tint':
      return paints(plan, inGlaze);
    case 'mix':
      return said.includes('=') ? paints(plan, false) : [];
    case 'paint':
      if (joint === 'in') return names(materialNames('binder'), 'material', 1);
      return said.includes('=')
        ? [
            ...names(plan.visible.pigments.keys(), 'pigment', 1),
            ...pigments(false, 2),
            { label: 'in', kind: 'word', rank: 0 },
          ]
        : [];
    case 'pigment':
      return joint === 'like'
        ? pigments(false, 1)
        : said.trim()
          ? [{ label: 'like', kind: 'word', rank: 0 }]
          : [];
    case 'medium':
      return chunk.word === 'medium' && !said.includes('=') ? [] : liquids(plan);
    case 'prepare':
      if (joint === 'with')
        return [
          ...names(plan.visible.mediums.keys(), 'medium', 2),
          ...names(materialNames('agent'), 'material', 1),
        ];
      return said.trim()
        ? [{ label: 'with', kind: 'word', rank: 0 }]
        : names(['wipe', 'abrade', 'oil-out', 'wash'], 'value', 1);
    case 'resin':
      return names(materialNames('resin'), 'material', 1);
    case 'material':
      return names(materialNames('ground'), 'material', 1);
    case 'support':
      return said.trim() ? [] : names(materialNames('support'), 'material', 1);
    case 'film':
      return said.trim()
        ? []
        : Object.entries(filmWords).map(([label, f]) => ({
            label,
            kind: 'value',
            detail: `${f.low}–${f.high} µm`,
            rank: 1,
          }));
    case 'allow':
      if (/\S\s+$/.test(said))
        return [{ label: 'because', kind: 'word', insert: 'because "$1"', snippet: true, rank: 0 }];
      return rules.map((r) => ({ label: r.id, kind: 'rule', detail: r.title, rank: 1 }));
    case 'light-source':
      return names(['D65', 'D50', 'A'], 'value', 1);
    case 'specular':
      return names(['included', 'excluded'], 'value', 1);
    case 'lightfast':
      return names(['I', 'II', 'III', 'IV', 'V'], 'value', 1);
    default:
      return [];
  }
}

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
  if (block === 'sample')
    return names(
      plan.layers.map((l) => l.name),
      'layer',
      1,
    );
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
          ? [...variety, ...values(plan, chunk.word, said, chunk)]
          : values(plan, chunk.word, said, chunk),
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
  const word = /^[a-z-]+/.exec(text.slice(field, field + 20))?.[0] ?? '';
  const said = text.slice(field + word.length, place.start);
  // a single-line block: after three spaces another field may begin
  const next = /\s{2,}$/.test(said) && said.trim() ? fields(plan, block, chunk, text, place.start) : [];
  return { items: [...varieties(said), ...values(plan, word, said, chunk), ...next], place };
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
  const word =
    declarationWords.find((d) => d.word === label) ??
    (['layer', 'studio', 'pigment'] as const).flatMap(fieldsOf).find((f) => f.word === label);
  return word && `${word.about}\n\n\`${word.example}\``;
}
