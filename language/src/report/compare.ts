/** Two versions of a plan, compared in meaning: layers, figures, colours, findings. Spacing and comments do not count. */
import { fatness, range, time } from '../features/figures.ts';
import { deltaE00 } from '../optics/difference.ts';
import { formulaWords, paintWords } from '../plan/formula-words.ts';
import type { Plan } from '../plan/plan.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import type { Finding } from '../rules/rule.ts';
import { compareFindings, type FindingsCompared } from './compare-findings.ts';
import { list, type Part, type Report, table } from './document.ts';
import { madeOf } from './parts.ts';

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
    readonly deltaE00?: number;
  }[];
  readonly findings: FindingsCompared;
}

const names = (list: readonly { readonly name: string }[]) => list.map((x) => x.name).join(', ');

/** What a painter would say of a layer, field by field. */
function layerFacts(l: LayerStudy): Map<string, string> {
  const { layer, composition: c } = l;
  const facts: [string, string][] = [
    ['kind', layer.kind],
    ['on', layer.everywhere ? 'everything' : l.areas.join(', ')],
    ['made of', madeOf(l)],
    ['film', layer.film?.words ?? ''],
    ['coats', String(l.coats)],
    [
      'prepare',
      layer.prepare
        .map((p) => [p.method, p.agent && `with ${p.agent.name}`].filter(Boolean).join(' '))
        .join(', then '),
    ],
    ['wipe out', names(layer.wipeOut)],
    ['wait', layer.wait?.words ?? ''],
    ['after', layer.after?.words ?? ''],
    ['painted', layer.painted?.iso ?? ''],
    ['dry', layer.dry?.iso ?? ''],
    ['measured', layer.measured.map((m) => m.colour.css).join(', ')],
    ['evidence', layer.evidence.map((e) => e.text).join('; ')],
    ['allow', layer.allows.map((a) => `${a.rule} because ${a.because ?? '–'}`).join('; ')],
    ['note', layer.notes.join(' / ')],
    ['fatness', c ? fatness(c.fatness) : ''],
    ['dry film, all coats', l.dryFilm ? range(l.dryFilm, 'µm') : ''],
    ['touch-dry', l.drying ? time(l.drying.touchDry) : ''],
  ];
  return new Map(facts);
}

function changes(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): Change[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((what) => {
    const [a, b] = [before.get(what) ?? '', after.get(what) ?? ''];
    return a === b ? [] : [{ what, before: a, after: b }];
  });
}

function planFacts(plan: Plan): Map<string, string> {
  const s = plan.studio;
  const facts: [string, string | undefined][] = [
    ['title', plan.title],
    ['start', plan.start?.iso],
    ['made', plan.made && `${plan.made.from}..${plan.made.to}`],
    [
      'support',
      [
        plan.support?.material?.name,
        [plan.support?.height?.words, plan.support?.width?.words].filter(Boolean).join(' × '),
      ]
        .filter(Boolean)
        .join(' '),
    ],
    ...(['temperature', 'humidity', 'room', 'airChanges', 'session'] as const).map(
      (f): [string, string | undefined] => [`studio ${f === 'airChanges' ? 'air-changes' : f}`, s[f]?.words],
    ),
    ['studio light', s.light && [s.light.lux.words, s.light.hoursPerYear?.words].filter(Boolean).join(' ')],
    ['studio light-source', s.lightSource?.value],
    ['studio specular', s.specular?.value],
    ...plan.uses.map((u): [string, string] => [`use ${u.path}`, 'yes']),
    ...(plan.implicitArea
      ? []
      : plan.areas.map((a): [string, string] => [`area ${a.name}`, a.share?.words ?? 'yes'])),
    ...plan.groups.map((g): [string, string] => [`group ${g.name}`, names(g.members)]),
    ...[...plan.visible.paints.values()].map((p): [string, string] => [
      `paint ${p.name}`,
      `${paintWords(p)}${p.oil ? ` ${p.oil.words}` : ''}`,
    ]),
    ...[...plan.visible.mediums.values()].map((m): [string, string] => [
      `medium ${m.name}`,
      formulaWords(m.formula),
    ]),
    ...[...plan.visible.mixes.values()].map((m): [string, string] => [
      `mix ${m.name}`,
      `${formulaWords(m.formula)}${m.target ? ` target ${m.target.css}` : ''}`,
    ]),
    ...plan.targets.map((t, i): [string, string] => [
      `target ${t.in?.name ?? i + 1}`,
      `${t.colour?.css ?? ''}${t.within ? ` within ${t.within.words}` : ''}`,
    ]),
  ];
  return new Map(facts.flatMap(([k, v]) => (v ? [[k, v] as const] : [])));
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

function finalColours(study: Study): Map<string, { hex: string; lab: readonly [number, number, number] }> {
  return new Map(
    study.areas.flatMap((a) => {
      const last = a.buildUp().at(-1)?.colour;
      return last ? [[a.name, { hex: last.hex, lab: last.lab }] as const] : [];
    }),
  );
}

/** Compares two versions of a plan in meaning; spacing, comments and order of fields do not count. */
export function compare(before: Version, after: Version): Comparison {
  const old = new Map(before.study.layers.map((l) => [l.layer.name, l]));
  const now = new Map(after.study.layers.map((l) => [l.layer.name, l]));
  const [oldColours, newColours] = [finalColours(before.study), finalColours(after.study)];
  return {
    layers: {
      added: [...now.keys()].filter((n) => !old.has(n)),
      removed: [...old.keys()].filter((n) => !now.has(n)),
      moved: moved([...old.keys()], [...now.keys()]),
      changed: [...old].flatMap(([layer, l]) => {
        const other = now.get(layer);
        const changed = other ? changes(layerFacts(l), layerFacts(other)) : [];
        return changed.length > 0 ? [{ layer, changes: changed }] : [];
      }),
    },
    declarations: changes(planFacts(before.study.plan), planFacts(after.study.plan)),
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
        { text: x.before ?? '–', swatch: x.before },
        { text: x.after ?? '–', swatch: x.after },
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
