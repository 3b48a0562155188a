/** Writes language/docs/rules.md from the rules themselves: `node language/build/rules-page.ts`. */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Mark, Source } from '../src/materials/types.ts';
import { rules } from '../src/rules/index.ts';
import type { Rule } from '../src/rules/rule.ts';
import { languageReference } from '../src/rules/words.ts';

/** Themes in the order of the page, each with its rules; a rule named nowhere is an error. */
const THEMES: readonly (readonly [string, string, readonly string[]])[] = [
  [
    'Language and names',
    'Slips of the pen: what cannot be read, resolved or added up.',
    [
      'unknown-pigment',
      'pigment-needs-variety',
      'unknown-material',
      'unknown-name',
      'duplicate-name',
      'name-clash-in-use',
      'use-missing',
      'use-cycle',
      'use-outside-workspace',
      'parts-not-100',
      'mixed-amounts',
      'circular-mix',
      'missing-field',
      'repeated-field',
      'out-of-range',
      'area-over-100',
      'area-unpainted',
      'unused-declaration',
      'layer-empty',
      'date-order',
      'unneeded-allow',
      'unknown-rule',
      'not-in-plan',
      'not-in-record',
    ],
  ],
  [
    'Fat, lean and drying',
    'Whether each film can dry on the one beneath it, and when.',
    [
      'lean-over-fat',
      'fat-colour-low',
      'underbound',
      'too-much-solvent',
      'too-much-medium',
      'fast-over-slow',
      'not-ready',
      'short-open-time',
      'slow-underlayer',
      'thick-fat-film',
      'film-too-thick-for-kind',
    ],
  ],
  [
    'Adhesion and structure',
    'Whether the layers hold on to one another and to their support.',
    [
      'beading-risk',
      'unsound-preparation',
      'residue-agent',
      'oil-out-excess',
      'oil-out-left-last',
      'abrade-toxic-layer',
      'zinc-in-ground',
      'zinc-in-film',
      'acrylic-over-oil',
      'ground-not-cured',
      'ground-unsealed',
      'asphalt-below',
      'brown-coal-film',
      'varnish-too-early',
      'varnish-between-layers',
      'support-ground-mismatch',
    ],
  ],
  [
    'Glazes and order',
    'What will be seen of each layer. These rest on predicted colours, each with its radius.',
    [
      'opaque-white-in-glaze',
      'opaque-in-glaze',
      'glaze-cannot-lighten',
      'glaze-invisible',
      'glaze-hides',
      'underlayer-drowned',
      'target-missed',
      'swatch-inconsistent',
      'measured-far-from-predicted',
    ],
  ],
  [
    'Lasting',
    'What light, time and the neighbours will do to the colours.',
    ['fugitive-pigment', 'not-in-period', 'incompatible-pair', 'darkens-or-greys'],
  ],
  [
    'Health',
    'Poison, vapour and fire. They defer to the maker’s safety data sheet, to the codes of your place and to licensed practice.',
    ['toxic-pigment', 'vapour-over-limit', 'air-unknown', 'oily-rags', 'restricted-material'],
  ],
  [
    'Records',
    'Whether what was observed of an old painting agrees with itself. Records take no craft advice.',
    ['sample-order-conflict', 'sample-thickness-outside', 'sample-wrong-area', 'made-range-empty'],
  ],
];

const MARKS: Readonly<Record<Mark, string>> = {
  published: 'published',
  'second-hand': 'second-hand: quoted by another',
  memory: 'from memory, not looked up',
  'common practice': 'common practice',
  derived: 'derived from other figures',
  assumption: 'our assumption',
};

const INTRO = `# The rules

<!-- Written by language/build/rules-page.ts from the rules themselves. Change those, then run it again. -->

What Paintplan says about a plan comes from the rules below. A message says what, why and what to do, with the figures
it rests on. An estimate is a range: a rule speaks firmly where the whole range agrees, and mildly where only the likely
value does, so a finding may be milder or firmer than the severity printed here.

An **error** is a slip of the pen or a step that should not be taken; a **warning** is a risk; **info** is worth knowing;
a **hint** is a small remark. The editor’s settings and \`check --rule ID=off|hint|info|warning|error\` change the severity
of a rule. In a plan, \`allow\` silences one rule on its layer, or in the whole file where it stands outside of layers, and
says why:

\`\`\`paintplan
plan "A breath of white"
support linen 40 x 50 cm
allow oily-rags because "a closed metal can stands by the door"
layer body { colour 3 PW6 + 1 PY43   medium 20 % linseed }
scumble last-light {
  colour PW6
  film veil
  allow lean-over-fat because "dry-brushed, hardly a film"
}
\`\`\`

An \`allow\` that silences nothing is itself reported. A test strip and the maker’s safety data sheet come first, always.
`;

/** A mark that the text itself states is not said twice. */
function source(s: Source): string {
  if (s === languageReference) return 'the language itself';
  const text = s.text.replace(/\.$/, '');
  return s.mark === 'memory' && /from memory/.test(text) ? text : `${text} (${MARKS[s.mark]})`;
}

const files: Readonly<Record<Rule['appliesTo'][number], string>> = {
  plan: 'plans',
  record: 'records',
  palette: 'palettes',
};

function entry(rule: Rule): string {
  const where = rule.appliesTo.map((k) => files[k]);
  const more = rule.needsColour ? ' Needs predicted colours.' : '';
  return `### ${rule.id}

**${rule.title}.** Severity: ${rule.severity}. Looks at ${where.join(', ')}.${more}

${rule.why}

*What to do:* ${rule.whatToDo}

*Rests on:* ${rule.sources.map(source).join('; ')}.
`;
}

/** The whole page. Throws where a rule has no theme. */
export function rulesPage(): string {
  const byId = new Map(rules.map((r) => [r.id, r]));
  const themed = new Set(THEMES.flatMap(([, , ids]) => ids));
  const lost = rules.filter((r) => !themed.has(r.id)).map((r) => r.id);
  if (lost.length > 0) throw new Error(`no theme in language/build/rules-page.ts for ${lost.join(', ')}`);
  const parts = THEMES.map(([title, about, ids]) => {
    const here = ids.flatMap((id) => byId.get(id) ?? []);
    return here.length === 0 ? '' : `## ${title}\n\n${about}\n\n${here.map(entry).join('\n')}`;
  });
  return `${[INTRO, ...parts.filter(Boolean)].join('\n')}`;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  writeFileSync(new URL('../docs/rules.md', import.meta.url), rulesPage());
