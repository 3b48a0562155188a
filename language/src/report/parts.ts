/** The parts of a report on a plan. Each is left out where there is nothing to say. */
import { sourceWords } from '../features/describe.ts';
import { amount, days, fatness, percent, range, time } from '../features/figures.ts';
import { deferringLine } from '../materials/cautions.ts';
import { BEYOND_SRGB, screenWords } from '../optics/css.ts';
import { layerFacts, layerRows, lineOf, stated, wordsOf } from '../plan/stated.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import type { Finding } from '../rules/rule.ts';
import { limitName } from '../studio/air-limits.ts';
import { diary } from '../studio/diary.ts';
import { letDownWords, mediumWords, mixtures, partsWords } from '../studio/parts.ts';
import { purchaseWords, shopping, totalWords } from '../studio/shopping.ts';
import { sittings } from '../studio/sittings.ts';
import { dayWords } from '../studio/words.ts';
import { type Block, list, type Part, table, words } from './document.ts';
import { IN_FULL, WHOLE } from './extent.ts';

const part = (id: string, title: string, ...blocks: (Block | undefined)[]): Part => ({
  id,
  title,
  blocks: blocks.filter((b) => b !== undefined),
});

/** The fields that say what a layer is made of. */
const MADE_OF: ReadonlySet<string> = new Set(['colour', 'medium', 'material', 'resin']);

/** What a layer is made of, as the plan says it. */
export const madeOf = ({ layer }: LayerStudy): string =>
  layerFacts(layer)
    .filter((f) => MADE_OF.has(f.word))
    .map(wordsOf)
    .filter((w) => w !== '')
    .join('; ');

/** Columns for the fields a report has no words of its own for, as far as some layer says them. */
function otherFields(layers: readonly LayerStudy[], of: 'plan' | 'record') {
  const facts = layers.map(({ layer }) => new Map(layerFacts(layer).map((f) => [f.word, wordsOf(f)])));
  const rows = layerRows.filter(
    (r) => r.told !== 'both' && r.told !== of && facts.some((f) => f.has(r.word)),
  );
  return {
    heads: rows.map((r) => r.word),
    cells: (index: number): string[] => rows.map((r) => facts[index]?.get(r.word) ?? ''),
  };
}

const where = ({ layer, areas }: LayerStudy) => (layer.everywhere ? 'everything' : areas.join(', '));

export function findingsPart(findings: readonly Finding[], line: (f: Finding) => string): Part | undefined {
  const shown = findings.filter((f) => f.severity !== 'hint');
  if (shown.length === 0) return part('findings', 'Findings', words('Nothing to report.'));
  return part(
    'findings',
    'Findings',
    table(
      ['where', 'how grave', 'rule', 'what'],
      shown.map((f) => [line(f), f.severity, f.rule, f.message]),
    ),
  );
}

export function layersPart(study: Study): Part | undefined {
  if (study.layers.length === 0) return undefined;
  const other = otherFields(study.layers, 'plan');
  const rows = study.layers.map((l, i) => [
    String(i + 1),
    { text: `${l.layer.kind} ${l.layer.name}`, layer: l.layer.name },
    where(l),
    madeOf(l),
    ...other.cells(i),
    String(l.coats),
    range(l.composition?.dryFilm ?? l.dryFilm),
    range(l.composition?.wetFilm),
    percent(l.composition?.pvc),
    percent(l.composition?.cpvc),
    fatness(l.composition?.fatness),
  ]);
  const notes = study.layers.flatMap((l) => [
    ...(l.layer.description ? [`${l.layer.name}: ${l.layer.description}`] : []),
    ...l.layer.notes.map((n) => `${l.layer.name}: ${n}`),
  ]);
  return part(
    'layers',
    'Layers, from the support upwards',
    table(
      [
        '',
        'layer',
        'on',
        'made of',
        ...other.heads,
        'coats',
        'dry film a coat, µm',
        'wet, µm',
        'pigment by volume',
        'critical',
        'fatness',
      ],
      rows,
    ),
    notes.length > 0 ? list(notes) : undefined,
  );
}

export function dryingPart(study: Study): Part | undefined {
  const rows = study.layers.flatMap(({ layer, drying: d }) =>
    d
      ? [
          [
            { text: layer.name, layer: layer.name },
            time(d.open),
            time(d.touchDry),
            time(d.ready),
            time(d.firm),
          ],
        ]
      : [],
  );
  if (rows.length === 0) return undefined;
  return part(
    'drying',
    'Drying, each coat',
    table(['layer', 'open to work', 'touch-dry', 'ready for the next', 'firm'], rows),
  );
}

/** Saturated blues differ by several ΔE00 between the two, so a figure copied from here into a plan would mislead. */
const NOT_D50 = 'A lab() of the text is another figure: CSS has it under D50.';

/** Under another light the figures are those of what looks the same under D65, so that they can be compared. */
function seenUnder({ plan }: Study): string {
  const light = plan.studio.lightSource?.value ?? 'D65';
  return light === 'D65'
    ? `CIELAB under D65, 2° observer. ${NOT_D50}`
    : `Seen under illuminant ${light}, 2° observer; CIELAB of what looks the same under D65. ${NOT_D50}`;
}

export function coloursPart(study: Study, extent = WHOLE): Part | undefined {
  const areas = study.areas.slice(0, extent.areas);
  const more = study.areas.length - areas.length;
  const tables = areas.flatMap((area) => {
    const rows = area
      .buildUp()
      .map(({ layer, colour: c }) => [
        { text: layer, swatch: c.hex, layer },
        `${c.lab.map((v) => String(Math.round(v) + 0)).join(' ')}`,
        screenWords(c),
        `± ${c.radius.toFixed(1)}`,
        c.confidence,
      ]);
    if (rows.length === 0) return [];
    const target = area.target();
    const aim = target
      ? `Target ${target.css}: ${target.deltaE00 === undefined ? 'nothing predicted to compare' : `ΔE00 ${target.deltaE00.toFixed(1)}, wanted within ${target.within}`}.`
      : undefined;
    return [
      table(['after', 'L* a* b*', 'sRGB', 'ΔE00', 'data'], rows, area.name),
      aim ? words(aim) : undefined,
    ];
  });
  if (tables.length === 0) return undefined;
  const beyond = areas.some((area) => area.buildUp().some((b) => b.colour.outOfGamut));
  return part(
    'colours',
    'Colour after each layer',
    ...tables,
    more > 0 ? words(`${more} more areas are left out here. ${IN_FULL}`) : undefined,
    words(
      `${seenUnder(study)}${beyond ? ` ${BEYOND_SRGB}` : ''} ± holds two in three. Data: A measured in oil, B measured in another binder, C derived from films over four grounds, D estimated by kinship.`,
      true,
    ),
  );
}

export function calendarPart(study: Study): Part | undefined {
  const { dated, entries } = study.calendar;
  if (study.plan.kind !== 'plan' || entries.length === 0) return undefined;
  const rows = entries.map((e) => [
    { text: e.layer, layer: e.layer },
    String(e.coat),
    ...days(e, dated),
    e.daysToSpare === undefined ? '' : String(Math.round(e.daysToSpare)),
    e.heldBy ? `${e.heldBy.layer} on ${e.heldBy.area}: ${e.heldBy.reason}` : '',
  ]);
  return part(
    'calendar',
    'Calendar',
    table(['layer', 'coat', 'not before', 'likely', 'safe from', 'days to spare', 'held by'], rows),
  );
}

export function diaryPart(study: Study): Part | undefined {
  if (study.plan.kind !== 'plan') return undefined;
  const entries = diary(study);
  if (entries.length === 0) return undefined;
  return part(
    'diary',
    'Diary of sittings',
    table(
      ['sitting', 'not before', 'likely', 'safe from', 'what to do'],
      entries.map((e) => [String(e.sitting), ...days(e, study.calendar.dated), e.steps.join(' ')]),
    ),
  );
}

export function quantitiesPart(study: Study): Part | undefined {
  if (study.plan.kind !== 'plan') return undefined;
  const { dated } = study.calendar;
  const mixing = sittings(study.calendar).flatMap((s) =>
    mixtures(study, s.entries).map((m) => [
      String(s.number),
      s.day === undefined ? '' : dayWords(s.day, dated),
      m.layers.join(', '),
      [partsWords(m), letDownWords(m)].filter(Boolean).join('. '),
      m.mediums.map(mediumWords).join('; '),
    ]),
  );
  const mix =
    mixing.length > 0
      ? table(
          ['sitting', 'likely', 'for', 'mix', 'medium'],
          mixing,
          'To mix: parts by volume, in order, the last by the knife’s tip',
        )
      : undefined;
  const q = study.quantities;
  if (!q) return mix && part('materials', 'Materials', mix);
  const buying = shopping(study.plan, q);
  const tubes = new Map(buying.purchases.map((p) => [p.name, purchaseWords(p)]));
  const cost = totalWords(buying);
  const rows = [
    ...q.paints.map((p) => [
      p.name,
      'paint',
      amount(p.ml, 'ml'),
      amount(p.g, 'g'),
      tubes.get(p.name) ?? 'ground by hand',
    ]),
    ...q.mediums.flatMap((m) => {
      const [only] = m.ingredients;
      // a medium of one liquid is that liquid
      const same = m.ingredients.length === 1 && only?.name === m.name;
      return [
        [m.name, 'medium', amount(m.ml, 'ml'), same ? amount(only?.g, 'g') : '', ''],
        ...(same ? [] : m.ingredients).map((i) => [
          `– ${i.name}`,
          `in ${m.name}`,
          amount(i.ml, 'ml'),
          amount(i.g, 'g'),
          '',
        ]),
      ];
    }),
    ...q.agents.map((a) => [
      a.name,
      a.method,
      a.ml
        ? `${amount(a.ml, 'ml')}${a.stays ? `, of which ${amount(a.stays, 'ml')} stay; the rest is on the cloth` : ''}`
        : 'as needed',
      '',
      '',
    ]),
  ];
  return part(
    'materials',
    'Materials',
    mix,
    table(['what', 'as', 'volume', 'mass', 'to buy'], rows, 'In all'),
    cost === undefined ? undefined : words(cost),
    list([...q.assumptions, ...buying.assumptions].map((a) => `${a.field} ${a.value}: ${a.why}`)),
  );
}

export function airPart(study: Study): Part | undefined {
  const a = study.air;
  if (study.plan.kind !== 'plan' || !a || a.solvents.length === 0) return undefined;
  const rows = a.solvents.map((s) => [
    s.name,
    amount(s.grams, 'g'),
    s.ppm ? range(s.ppm, 'ppm') : s.mgPerM3 ? range(s.mgPerM3, 'mg/m³') : '–',
    s.limits.length > 0
      ? s.limits
          .map((l) => `${l.ppm !== undefined ? `${l.ppm} ppm` : `${l.mgPerM3} mg/m³`} ${limitName(l)}`)
          .join('; ')
      : 'no limit found',
  ]);
  const need = a.neededFreshAir
    ? `The plan names no room: ${range(a.neededFreshAir, 'm³')} of fresh air an hour keep it at the limit.`
    : a.neededAirChanges
      ? `${range(a.neededAirChanges)} air changes an hour keep it at the limit.`
      : undefined;
  return part(
    'air',
    'Air',
    a.layer ? words(`The session with the most vapour is ‘${a.layer}’.`) : undefined,
    table(['solvent', 'evaporates', 'in the air', 'limits, the strictest first'], rows),
    need ? words(need) : undefined,
    list(a.assumptions.map((x) => `${x.field} ${x.value}: ${x.why}`)),
  );
}

export function permanencePart(study: Study): Part | undefined {
  if (study.permanence.length === 0) return undefined;
  const rows = study.permanence.map((p) => [
    p.layer,
    p.pigment.id,
    p.lightfastness ?? 'not listed',
    p.years ? range(p.years) : '',
    p.note ?? '',
    sourceWords(p.source),
  ]);
  return part(
    'permanence',
    'Permanence',
    table(['layer', 'pigment', 'ASTM D4302 in oil', 'years to a just visible fade', 'note', 'source'], rows),
  );
}

export function cautionsPart(study: Study): Part | undefined {
  const items = study.cautions.map(
    (c) => `${c.title} (${c.where.join(', ')}): ${c.text} [${sourceWords(c.source)}]`,
  );
  return part('cautions', 'Cautions', words(deferringLine.text), items.length > 0 ? list(items) : undefined);
}

export function allowsPart(study: Study): Part | undefined {
  const all = [
    ...study.plan.allows.map((a) => `${a.rule}, for the whole plan: ${a.because ?? 'no reason given'}`),
    ...study.plan.layers.flatMap((l) =>
      l.allows.map((a) => `${a.rule} on ${l.name}: ${a.because ?? 'no reason given'}`),
    ),
  ];
  return all.length > 0 ? part('allowed', 'Allowed, and why', list(all)) : undefined;
}

export function assumptionsPart(study: Study): Part | undefined {
  const all = [
    ...study.assumptions.map((a) => `${a.field} ${a.value}: ${a.why}`),
    ...study.layers.flatMap((l) =>
      l.assumptions.map((a) => `${l.layer.name}, ${a.field} ${a.value}: ${a.why}`),
    ),
  ];
  return all.length > 0 ? part('assumptions', 'Assumed where the text is silent', list(all)) : undefined;
}

export function sourcesPart(study: Study): Part | undefined {
  const items = study.sources.map(sourceWords);
  return items.length > 0
    ? part('sources', 'Sources', list(items), words(`Data of ${study.dataVersion}.`, true))
    : undefined;
}

/** What the file declares besides its layers, in its own words: what paints are made of, the studio, the areas. */
export function statedPart(study: Study): Part | undefined {
  const rows = [...stated(study.plan)].flatMap((subject) => {
    const { word, name, layer, facts } = subject;
    // the title, the notes and what is allowed stand elsewhere
    if (word === '' || layer) return [];
    const head = [word, name].filter(Boolean).join(' ');
    const line = lineOf(subject);
    const fields = facts
      .filter((f) => f.field)
      .map((f) => [[head, f.word].filter(Boolean).join(' '), wordsOf(f)]);
    return [...(line ? [[head, line]] : []), ...fields];
  });
  return rows.length > 0 ? part('stated', 'As declared', table(['what', 'as declared'], rows)) : undefined;
}

/** A record's layer structure as a restorer files it. */
export function structurePart(study: Study): Part | undefined {
  const { plan } = study;
  if (plan.kind !== 'record' || study.layers.length === 0) return undefined;
  const other = otherFields(study.layers, 'record');
  const rows = study.layers.map((l, i) => [
    String(i + 1),
    { text: `${l.layer.kind} ${l.layer.name}`, layer: l.layer.name },
    where(l),
    madeOf(l) || 'not recorded',
    l.layer.film ? l.layer.film.words : 'not recorded',
    ...other.cells(i),
    plan.samples
      .flatMap((s) =>
        s.layers
          .filter((x) => x.layer.is?.index === i)
          .map((x) => `${s.name}${x.film ? ` ${x.film.words}` : ''}`),
      )
      .join('; '),
  ]);
  return part(
    'structure',
    'Layer structure, from the support upwards',
    table(['', 'layer', 'on', 'material', 'film', ...other.heads, 'samples'], rows),
  );
}
