/** What `explain` says of a rule, a pigment or a material: the words come from the rule's file and the tables. */
import { alike } from '../features/alike.ts';
import { type Description, describeMaterial, describePigment, sourceWords } from '../features/describe.ts';
import { figure } from '../features/figures.ts';
import { allPigments, lookupPigment, materialNames, nearest } from '../materials/catalogue.ts';
import type { Pigment } from '../materials/types.ts';
import { rules } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';

export function helpText(rule: Rule): string {
  return [
    rule.why,
    `What to do: ${rule.whatToDo}`,
    `Sources: ${rule.sources.map(sourceWords).join('; ')}.`,
  ].join('\n\n');
}

export function helpMarkdown(rule: Rule): string {
  const sources = ['**Sources**', ...rule.sources.map((s) => `- ${sourceWords(s)}`)].join('\n');
  return [rule.why, `**What to do.** ${rule.whatToDo}`, sources].join('\n\n');
}

function lay({ title, rows }: Description): string {
  const width = Math.max(...rows.map((r) => r.label.length)) + 2;
  const pad = ' '.repeat(width + 2);
  return [
    title,
    '',
    ...rows.map(
      (r) => `  ${r.label.padEnd(width)}${r.words}${r.source ? `\n${pad}[${sourceWords(r.source)}]` : ''}`,
    ),
  ].join('\n');
}

const lines = (found: readonly Description[]) => ({ text: found.map(lay).join('\n\n') });

/** A pigment with those that look most like it. */
function withAlike(pigment: Pigment): Description {
  const { title, rows } = describePigment(pigment);
  return {
    title,
    rows: [
      ...rows,
      ...alike(pigment).map((a, i) => ({
        label: i === 0 ? 'nearest' : '',
        words: `${a.pigment.id} (${a.pigment.names[0] ?? a.pigment.id}): ΔE00 ${figure(a.thick)} thick, ${figure(a.inWhite)} in white, ${figure(a.glaze)} glazed${a.loses.length > 0 ? `; ${a.loses.join(', ')}` : ''}`,
      })),
    ],
  };
}

/** The words on a rule, a pigment (code, with or without its variety) or a material; or the nearest names. */
export function explain(words: string): { readonly text: string } | { readonly near: readonly string[] } {
  const name = words.trim();
  const rule = rules.find((r) => r.id === name);
  if (rule) return { text: `${rule.id}  ${rule.title} (${rule.severity})\n\n${helpText(rule)}` };
  const [code = '', ...rest] = name.split(/\s+/);
  const lookup = lookupPigment(code, rest.join('-') || undefined);
  if (lookup.kind === 'found') return lines([withAlike(lookup.pigment)]);
  if (lookup.kind === 'needs-variety' || lookup.kind === 'unknown-variety')
    return lines(lookup.choices.map(describePigment));
  const plain = name.toLowerCase().replaceAll(' ', '-');
  const materials = describeMaterial(plain);
  if (materials.length > 0) return lines(materials);
  const named = allPigments().filter((p) =>
    p.names.some((n) => n.toLowerCase().replaceAll(' ', '-') === plain),
  );
  if (named.length > 0) return lines(named.map(describePigment));
  const roles = ['medium', 'binder', 'resin', 'support', 'ground', 'agent'] as const;
  const names = [
    ...rules.map((r) => r.id),
    ...allPigments().map((p) => p.id),
    ...new Set(roles.flatMap((r) => materialNames(r))),
  ];
  return { near: [...new Set([...lookup.near, ...nearest(plain, names, 3)])].slice(0, 5) };
}
