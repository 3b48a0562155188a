/** Two versions of a plan, compared in meaning: layers, figures, colours, findings. Spacing and comments do not count. */

import { fatness, range, time } from '../features/figures.ts';
import { screenWords } from '../optics/css.ts';
import { deltaE00 } from '../optics/difference.ts';
import type { Plan } from '../plan/plan.ts';
import type { Json } from '../plan/shown.ts';
import { layerFacts, layerRows, lineOf, meaningOf, type Subject, stated, wordsOf } from '../plan/stated.ts';
import type { ColourOn, LayerStudy, Study } from '../results/study.ts';
import type { Finding } from '../rules/rule.ts';
import { sensible } from '../study/sensible.ts';
import { compareFindings, type FindingsCompared } from './compare-findings.ts';
import { list, type Part, type Report, table } from './document.ts';

/** One side of a comparison: a study and its findings. */
export interface Version {
  readonly study: Study;
  readonly findings: readonly Finding[];
}

/** One fact, before and after, in a painter’s words; empty where it was or is not there. */
export interface Change {
  readonly what: string;
  readonly before: string;
  readonly after: string;
}

/** What changed in meaning. Colours are sRGB after the last layer of an area, ΔE00 between them. */
export interface Comparison {
  readonly layers: {
    readonly added: readonly string[];
    readonly removed: readonly string[];
    readonly moved: readonly { readonly layer: string; readonly from: number; readonly to: number }[];
    readonly changed: readonly { readonly layer: string; readonly changes: readonly Change[] }[];
  };
  /** paints, mediums, mixes, areas, studio and the rest of the plan's head */
  readonly declarations: readonly Change[];
  readonly colours: readonly {
    readonly area: string;
    readonly before?: string;
    readonly after?: string;
    /** which of the two sRGB cannot show; its figure is then the nearest */
    readonly outOfGamut: { readonly before: boolean; readonly after: boolean };
    readonly deltaE00?: number;
  }[];
  readonly findings: FindingsCompared;
}

/** A fact in words, and what counts of it: two are the same where either is. */
interface Told {
  readonly words: string;
  readonly meaning?: string;
}
type Facts = Map<string, Told>;

/** Puts a fact under its name; another one of that name gets a number, so that none is lost. */
function put(facts: Facts, what: string, words: string, meaning?: Json): void {
  if (words === '') return;
  let name = what;
  for (let n = 2; facts.has(name); n++) name = `${what} (${n})`;
  facts.set(name, {
    words,
    ...(meaning === undefined ? {} : { meaning: JSON.stringify(sensible(meaning)) }),
  });
}

/** What a painter would say of a layer, field by field, and what is computed of it. */
function toldOfLayer(l: LayerStudy): Facts {
  const { layer, composition: c } = l;
  const facts: Facts = new Map();
  const said = new Map(layerFacts(layer).map((f) => [f.word, f]));
  put(facts, 'kind', layer.kind);
  for (const { word, otherwise } of layerRows) {
    const fact = said.get(word);
    if (fact) put(facts, word, wordsOf(fact), meaningOf(fact));
    else put(facts, word, otherwise ?? '');
  }
  put(facts, 'fatness', c ? fatness(c.fatness) : '');
  put(facts, 'dry film, all coats', l.dryFilm ? range(l.dryFilm, 'µm') : '');
  put(facts, 'touch-dry', l.drying ? time(l.drying.touchDry) : '');
  return facts;
}

function changes(before: Facts, after: Facts): Change[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((what) => {
    const [a, b] = [before.get(what), after.get(what)];
    const same = a?.words === b?.words || (a?.meaning !== undefined && a.meaning === b?.meaning);
    return same ? [] : [{ what, before: a?.words ?? '', after: b?.words ?? '' }];
  });
}

const meaningOfAll = ({ facts, rows }: Subject): Json => [
  facts.filter((f) => !f.field).map((f) => [f.word, meaningOf(f)]),
  (rows ?? []).map((row) => [row.name, meaningOfAll(row)]),
];

/** Everything a file states besides its layers. */
function toldOfFile(plan: Plan): Facts {
  const told: Facts = new Map();
  for (const subject of stated(plan, { visible: true })) {
    const { word, name, layer, facts } = subject;
    if (layer) continue;
    const head = [word, name].filter(Boolean).join(' ');
    // a declaration is one fact, what stands in braces one each
    if (word !== '' && word !== 'studio') put(told, head, lineOf(subject) || 'yes', meaningOfAll(subject));
    for (const f of facts)
      if (f.field || word === '')
        put(told, [head, f.word].filter(Boolean).join(' '), wordsOf(f), meaningOf(f));
  }
  return told;
}

/** Layers whose order among the shared ones changed: those outside a longest run that kept its order. */
function moved(
  before: readonly string[],
  after: readonly string[],
): { layer: string; from: number; to: number }[] {
  const place = new Map(after.map((n, i) => [n, i]));
  const shared = before.filter((n) => place.has(n));
  const best: number[] = shared.map(() => 1);
  const previous: number[] = shared.map(() => -1);
  const position = (i: number) => place.get(shared[i] as string) as number;
  for (let i = 0; i < shared.length; i++)
    for (let j = 0; j < i; j++)
      if (position(j) < position(i) && (best[j] as number) + 1 > (best[i] as number)) {
        best[i] = (best[j] as number) + 1;
        previous[i] = j;
      }
  const kept = new Set<number>();
  for (let i = best.indexOf(Math.max(0, ...best)); i >= 0; i = previous[i] as number) kept.add(i);
  return shared.flatMap((layer, i) =>
    kept.has(i) ? [] : [{ layer, from: before.indexOf(layer) + 1, to: position(i) + 1 }],
  );
}

const shownAs = (hex: string | undefined, outOfGamut: boolean) => ({
  text: hex === undefined ? '–' : screenWords({ hex, outOfGamut }),
  swatch: hex,
});

function finalColours(study: Study): Map<string, ColourOn> {
  return new Map(
    study.areas.flatMap((a) => {
      const last = a.buildUp().at(-1)?.colour;
      return last ? [[a.name, last] as const] : [];
    }),
  );
}

/** Layers by name; another one of that name gets a number. */
function layersByName({ layers }: Study): Map<string, LayerStudy> {
  const named = new Map<string, LayerStudy>();
  for (const l of layers) {
    let { name } = l.layer;
    for (let n = 2; named.has(name); n++) name = `${l.layer.name} (${n})`;
    named.set(name, l);
  }
  return named;
}

/** Compares two versions of a plan in meaning; spacing, comments and order of fields do not count. */
export function compare(before: Version, after: Version): Comparison {
  const [old, now] = [layersByName(before.study), layersByName(after.study)];
  const [oldColours, newColours] = [finalColours(before.study), finalColours(after.study)];
  return {
    layers: {
      added: [...now.keys()].filter((n) => !old.has(n)),
      removed: [...old.keys()].filter((n) => !now.has(n)),
      moved: moved([...old.keys()], [...now.keys()]),
      changed: [...old].flatMap(([layer, l]) => {
        const other = now.get(layer);
        const changed = other ? changes(toldOfLayer(l), toldOfLayer(other)) : [];
        return changed.length > 0 ? [{ layer, changes: changed }] : [];
      }),
    },
    declarations: changes(toldOfFile(before.study.plan), toldOfFile(after.study.plan)),
    colours: [...new Set([...oldColours.keys(), ...newColours.keys()])].flatMap((area) => {
      const [a, b] = [oldColours.get(area), newColours.get(area)];
      const d = a && b ? deltaE00(a.lab, b.lab) : undefined;
      return d !== undefined && d < 0.05
        ? []
        : [
            {
              area,
              before: a?.hex,
              after: b?.hex,
              outOfGamut: { before: a?.outOfGamut ?? false, after: b?.outOfGamut ?? false },
              deltaE00: d === undefined ? undefined : Math.round(d * 100) / 100,
            },
          ];
    }),
    findings: compareFindings(
      { plan: before.study.plan, findings: before.findings },
      { plan: after.study.plan, findings: after.findings },
    ),
  };
}

/** True where nothing changed in meaning. */
export const isSame = (c: Comparison): boolean =>
  [
    c.layers.added,
    c.layers.removed,
    c.layers.moved,
    c.layers.changed,
    c.declarations,
    c.colours,
    c.findings.gained,
    c.findings.lost,
    c.findings.changed,
  ].every((x) => x.length === 0);

/** The comparison as blocks, for terminal and Markdown. */
export function comparisonReport(c: Comparison, title: string): Report {
  const parts: Part[] = [];
  const add = (id: string, heading: string, rows: number, block: () => Part['blocks']) => {
    if (rows > 0) parts.push({ id, title: heading, blocks: block() });
  };
  add('declarations', 'Declarations', c.declarations.length, () => [
    table(
      ['what', 'before', 'after'],
      c.declarations.map((x) => [x.what, x.before || '–', x.after || '–']),
    ),
  ]);
  add('added', 'Layers added', c.layers.added.length, () => [list(c.layers.added)]);
  add('removed', 'Layers removed', c.layers.removed.length, () => [list(c.layers.removed)]);
  add('moved', 'Layers moved', c.layers.moved.length, () => [
    list(c.layers.moved.map((m) => `${m.layer}: from place ${m.from} to place ${m.to}`)),
  ]);
  add('changed', 'Layers changed', c.layers.changed.length, () => [
    table(
      ['layer', 'what', 'before', 'after'],
      c.layers.changed.flatMap((l) =>
        l.changes.map((x, i) => [i === 0 ? l.layer : '', x.what, x.before || '–', x.after || '–']),
      ),
    ),
  ]);
  add('colours', 'Final colours', c.colours.length, () => [
    table(
      ['area', 'before', 'after', 'ΔE00'],
      c.colours.map((x) => [
        x.area,
        shownAs(x.before, x.outOfGamut.before),
        shownAs(x.after, x.outOfGamut.after),
        x.deltaE00 === undefined ? '–' : x.deltaE00.toFixed(1),
      ]),
    ),
  ]);
  add('gained', 'New findings', c.findings.gained.length, () => [list(c.findings.gained)]);
  add('otherwise', 'Findings changed', c.findings.changed.length, () => [
    list(c.findings.changed.map((f) => `${f.before} Now ${f.after}`)),
  ]);
  add('lost', 'Findings gone', c.findings.lost.length, () => [list(c.findings.lost)]);
  return { title, subtitle: parts.length === 0 ? 'The same in meaning.' : 'What changed in meaning.', parts };
}
