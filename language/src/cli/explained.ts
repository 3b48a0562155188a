/** What `explain` says of a rule, a pigment or a material: the words come from the rule's file and the tables. */
import { agent, allPigments, binder, ground, lookupPigment, materialNames, nearest, solvent, support } from '../materials/catalogue.ts';
import { classificationWords } from '../materials/cautions.ts';
import type { Figure, Pigment, Source } from '../materials/types.ts';
import { rules } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';

const sourced = (s: Source) => (s.mark === 'published' ? s.text : s.text.startsWith(s.mark) ? s.text : `${s.mark}: ${s.text}`);

export function helpText(rule: Rule): string {
  return [`${rule.why}`, `What to do: ${rule.whatToDo}`, `Sources: ${rule.sources.map(sourced).join('; ')}.`].join('\n\n');
}

export function helpMarkdown(rule: Rule): string {
  return [
    rule.why,
    `**What to do.** ${rule.whatToDo}`,
    ['**Sources**', ...rule.sources.map((s) => `- ${sourced(s)}`)].join('\n'),
  ].join('\n\n');
}

type Row = readonly [label: string, words: string, source?: Source];

const figure = (f: Figure, unit: string) => `${f.low === f.high ? f.low : `${f.low}–${f.high}`}${unit ? ` ${unit}` : ''}`;
const row = (label: string, f: Figure | undefined, unit: string): Row[] => (f ? [[label, figure(f, unit), f.source]] : []);

function lay(title: string, rows: readonly Row[]): string {
  const width = Math.max(...rows.map(([label]) => label.length)) + 2;
  const pad = ' '.repeat(width + 2);
  return [title, '', ...rows.map(([label, words, source]) => `  ${label.padEnd(width)}${words}${source ? `\n${pad}[${sourced(source)}]` : ''}`)].join('\n');
}

function pigmentWords(p: Pigment): string {
  return lay(`${p.id}  ${p.names.join(', ')}`, [
    ['composition', p.composition.value, p.composition.source],
    ...(p.cas ? [['CAS', p.cas] as Row] : []),
    ['transparency', p.transparency.value, p.transparency.source],
    ...row('density', p.density, 'g/cm³'),
    ...row('oil absorption', p.oilAbsorption, 'g per 100 g'),
    ...row('oil in paint', p.paintOil, 'g per 100 g'),
    ...row('refractive index', p.refractiveIndex, ''),
    ['drying in oil', p.drying.value, p.drying.source],
    ...(p.film ? [['film', p.film.value, p.film.source] as Row] : []),
    p.lightfastness
      ? ['lightfastness', `ASTM ${p.lightfastness.value}`, p.lightfastness.source]
      : ['lightfastness', p.lightfastnessNote?.value ?? 'not listed', p.lightfastnessNote?.source],
    ['hazards', p.hazards.length > 0 ? p.hazards.join(', ') : 'none named in the tables', p.hazardsSource],
    ['classification', classificationWords(p), p.classification?.source],
    ['in use', p.used.words, p.used.source],
    ...(p.incompatibilities ? [['goes badly with', p.incompatibilities.value, p.incompatibilities.source] as Row] : []),
  ]);
}

function materialWords(name: string): string | undefined {
  const b = binder(name);
  if (b)
    return lay(`${b.id}  ${b.names.join(', ')} (${b.kind})`, [
      ...row('density', b.density, 'g/cm³'),
      ...row('stays in the film', b.solids, 'of its mass, as a share of 1'),
      ...row('refractive index', b.refractiveIndex, ''),
      ...row('iodine value', b.iodineValue, ''),
      ...row('touch-dry', b.touchDry, 'days, thin film at 20 °C'),
      ...(b.yellowing ? [['yellowing', b.yellowing.value, b.yellowing.source] as Row] : []),
      ...(b.flexibility ? [['film', b.flexibility.value, b.flexibility.source] as Row] : []),
      ...(b.notes ? [['note', b.notes.value, b.notes.source] as Row] : []),
    ]);
  const s = solvent(name);
  if (s)
    return lay(`${s.id}  ${s.names.join(', ')}`, [
      ...row('density', s.density, 'g/ml'),
      ...row('boils', s.boiling, '°C'),
      ...row('flash point', s.flashPoint, '°C'),
      ...row('vapour pressure', s.vapourPressure, 'kPa at 20 °C'),
      ...s.limits.map((l): Row => [l.what, [l.ppm && `${l.ppm} ppm`, l.mgPerM3 && `${l.mgPerM3} mg/m³`].filter(Boolean).join(', '), l.source]),
      ...(s.ceiling ? [['ceiling', [s.ceiling.ppm && `${s.ceiling.ppm} ppm`, s.ceiling.mgPerM3 && `${s.ceiling.mgPerM3} mg/m³`].filter(Boolean).join(', '), s.ceiling.source] as Row] : []),
      ...(s.classification ? [['classification', s.classification.value, s.classification.source] as Row] : []),
      ...(s.notes ? [['note', s.notes.value, s.notes.source] as Row] : []),
    ]);
  const g = ground(name);
  if (g)
    return lay(`${g.id}  ${g.names.join(', ')} (${g.kind})`, [
      ['may be painted on', `after ${g.ready.least} days at least, ${g.ready.usual} usually, ${g.ready.best} at best`, g.ready.source],
      ['absorbent', g.absorbent ? 'yes' : 'no', g.source],
      ['on canvas', g.flexible ? 'flexible enough' : 'too stiff for a flexible support', g.source],
      ...row('film', g.film, 'µm'),
    ]);
  const u = support(name);
  if (u) return lay(`${u.id}  ${u.names.join(', ')} (${u.kind})`, [['wants a size', u.wantsSize ? 'yes' : 'no', u.source]]);
  const a = agent(name);
  return a ? lay(`${a.id}  ${a.names.join(', ')}`, [['verdict', a.verdict, a.why.source], ['why', a.why.value]]) : undefined;
}

/** The words on a rule, a pigment (code, with or without its variety) or a material; or the nearest names. */
export function explain(words: string): { readonly text: string } | { readonly near: readonly string[] } {
  const name = words.trim();
  const rule = rules.find((r) => r.id === name);
  if (rule) return { text: `${rule.id}  ${rule.title} (${rule.severity})\n\n${helpText(rule)}` };
  const [code = '', ...rest] = name.split(/\s+/);
  const found = lookupPigment(code, rest.join('-') || undefined);
  if (found.kind === 'found') return { text: pigmentWords(found.pigment) };
  if (found.kind === 'needs-variety' || found.kind === 'unknown-variety') return { text: found.choices.map(pigmentWords).join('\n\n') };
  const plain = name.toLowerCase().replaceAll(' ', '-');
  const material = materialWords(plain);
  if (material) return { text: material };
  const named = allPigments().filter((p) => p.names.some((n) => n.toLowerCase().replaceAll(' ', '-') === plain));
  if (named.length > 0) return { text: named.map(pigmentWords).join('\n\n') };
  const roles = ['medium', 'binder', 'resin', 'support', 'ground', 'agent'] as const;
  const names = [...rules.map((r) => r.id), ...allPigments().map((p) => p.id), ...new Set(roles.flatMap((r) => materialNames(r)))];
  return { near: [...new Set([...found.near, ...nearest(plain, names, 3)])].slice(0, 5) };
}
