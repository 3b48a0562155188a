/** The whole study as it is read in a terminal. */
import { sourceWords } from '../features/describe.ts';
import { day, fatness, percent, range, time } from '../features/figures.ts';
import { deferringLine } from '../materials/cautions.ts';
import type { Study } from '../study/study.ts';
import type { CheckedFile } from './formats/checked.ts';
import { textFormat } from './formats/text.ts';
import { paint, swatch, table, wrap } from './paper.ts';

function films(study: Study): string {
  return table(
    ['layer', 'kind', 'on', 'coats', 'dry film µm', 'wet µm', 'PVC', 'fatness'],
    study.layers.map(({ layer, areas, coats, composition: c, dryFilm }) => [
      layer.name,
      layer.kind,
      layer.everywhere ? 'everything' : areas.join(', '),
      String(coats),
      range(c?.dryFilm ?? dryFilm),
      range(c?.wetFilm),
      percent(c?.pvc),
      fatness(c?.fatness),
    ]),
  );
}

function drying(study: Study): string {
  return table(
    ['layer', 'open', 'touch-dry', 'ready', 'firm'],
    study.layers.flatMap(({ layer, drying: d }) => (d ? [[layer.name, time(d.open), time(d.touchDry), time(d.ready), time(d.firm)]] : [])),
  );
}

function colours(study: Study): string {
  return study.areas
    .flatMap((area) => {
      const rows = area.buildUp().map(({ layer, colour: c }) => [
        `${swatch(c.hex, 4)}${layer}`,
        `L* ${c.lab[0].toFixed(0)}  a* ${c.lab[1].toFixed(0)}  b* ${c.lab[2].toFixed(0)}`,
        c.hex,
        `± ${c.radius.toFixed(1)}`,
        c.confidence,
      ]);
      if (rows.length === 0) return [];
      const target = area.target();
      const aim = target
        ? `\n${wrap(`target ${target.css}: ${target.deltaE00 === undefined ? 'not predicted' : `ΔE00 ${target.deltaE00.toFixed(1)}`}, wanted within ${target.within}`, 2)}`
        : '';
      return [`${paint.bold(area.name)}\n${table(['after', 'CIELAB D65/2°', 'sRGB', 'ΔE00', 'data'], rows)}${aim}`];
    })
    .join('\n\n');
}

function calendar(study: Study): string {
  const { dated, entries } = study.calendar;
  return table(
    ['layer', 'coat', 'not before', 'safe from', 'held by'],
    entries.map((e) => [
      e.layer,
      String(e.coat),
      day(e.notBefore, dated),
      day(e.safeFrom, dated),
      e.heldBy ? `${e.heldBy.layer} on ${e.heldBy.area}: ${e.heldBy.reason}` : '',
    ]),
  );
}

function quantities(study: Study): string {
  const q = study.quantities;
  if (!q) return '  The plan names no support with a size, so no amounts can be told.';
  const rows = [
    ...q.paints.map((p) => [p.name, 'paint', range(p.ml, 'ml'), range(p.g, 'g')]),
    ...q.mediums.flatMap((m) => [
      [m.name, 'medium', range(m.ml, 'ml'), ''],
      ...m.ingredients.map((i) => [`  ${i.name}`, '', range(i.ml, 'ml'), range(i.g, 'g')]),
    ]),
    ...q.agents.map((a) => [a.name, a.method, range(a.ml, 'ml'), '']),
  ];
  return table(['what', 'as', 'volume', 'mass'], rows);
}

function air(study: Study): string {
  const a = study.air;
  if (!a) return '  No solvent is used.';
  const rows = a.solvents.map((s) => [
    s.name,
    range(s.grams, 'g'),
    s.ppm ? range(s.ppm, 'ppm') : s.mgPerM3 ? range(s.mgPerM3, 'mg/m³') : '–',
    s.limit ? `${s.limit.ppm !== undefined ? `${s.limit.ppm} ppm` : `${s.limit.mgPerM3} mg/m³`} (${s.limit.source})` : 'no limit found',
  ]);
  const worst = a.layer ? `  The most in one session is in ‘${a.layer}’.\n` : '';
  const need = a.neededFreshAir
    ? `\n  The plan names no room: this needs ${range(a.neededFreshAir)} m³ of fresh air an hour.`
    : a.neededAirChanges
      ? `\n  Needed: ${range(a.neededAirChanges)} air changes an hour.`
      : '';
  return `${worst}${table(['solvent', 'amount', 'in the air', 'limit'], rows)}${need}`;
}

function permanence(study: Study): string {
  return table(
    ['layer', 'pigment', 'ASTM', 'years to a visible fade', 'source'],
    study.permanence.map((p) => [p.layer, p.pigment.id, p.lightfastness ?? 'not listed', p.years ? range(p.years) : '', p.source.mark]),
  );
}

function cautions(study: Study): string {
  const lines = study.cautions.map((c) => `${wrap(`${c.title} (${c.where.join(', ')}): ${c.text}`, 2)}\n${wrap(`[${sourceWords(c.source)}]`, 4)}`);
  return [...lines, wrap(deferringLine.text, 2)].join('\n');
}

function assumptions(study: Study): string {
  const all = [...study.assumptions, ...study.layers.flatMap((l) => l.assumptions.map((a) => ({ ...a, field: `${l.layer.name}: ${a.field}` })))];
  return all.map((a) => wrap(`${a.field} ${a.value}: ${a.why}`, 2)).join('\n');
}

/** Every part under a heading; parts with nothing to say are left out. */
export function studyPaper(study: Study, checked: CheckedFile): string {
  const parts: readonly (readonly [string, string])[] = [
    ['Findings', textFormat([checked]).trimEnd()],
    ['Films, per coat', study.layers.length > 0 ? films(study) : ''],
    ['Drying, per coat', study.layers.some((l) => l.drying) ? drying(study) : ''],
    ['Colour after each layer', colours(study)],
    ['Calendar', study.plan.kind === 'plan' && study.calendar.entries.length > 0 ? calendar(study) : ''],
    ['Amounts, with a quarter more for waste', study.plan.kind === 'plan' ? quantities(study) : ''],
    ['Air', study.plan.kind === 'plan' ? air(study) : ''],
    ['Permanence', study.permanence.length > 0 ? permanence(study) : ''],
    ['Cautions', cautions(study)],
    ['Assumed where the text is silent', assumptions(study)],
    ['Sources', study.sources.map((s) => wrap(sourceWords(s), 2)).join('\n')],
  ];
  const title = paint.bold(`${study.plan.title ?? checked.path} (${study.plan.kind})`);
  return `${[title, ...parts.filter(([, text]) => text).map(([head, text]) => `${paint.bold(head)}\n${text}`)].join('\n\n')}\n`;
}
