/** Writes language/docs/rules.md from the rules themselves: `node language/build/rules-page.ts`. */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Mark, Source } from '../src/materials/types.ts';
import { rules } from '../src/rules/index.ts';
import type { Rule } from '../src/rules/rule.ts';
import { languageReference } from '../src/rules/shared/words.ts';
import { themes } from '../src/rules/themes.ts';

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

/** The whole page: the themes in their order, the rules of each by id. */
export function rulesPage(): string {
  const parts = Object.entries(themes).map(([theme, { title, about }]) => {
    const here = rules.filter((r) => r.theme === theme);
    return `## ${title}\n\n${about}\n\n${here.map(entry).join('\n')}`;
  });
  return [INTRO, ...parts].join('\n');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  writeFileSync(new URL('../docs/rules.md', import.meta.url), rulesPage());
