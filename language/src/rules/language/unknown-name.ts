import { declaredFor } from '../../plan/naming.ts';
import type { NameRole } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { replaceEach } from '../shared/fixes.ts';
import { languageReference, quoted, thereIs } from '../shared/words.ts';

/** How many messages list what is declared: a text of nothing but unknown names must not take for ever. */
const MOST_LISTS = 200;

/** What is missing where a name of this role is declared nowhere; names of the catalogue are another rule's. */
const WHAT: Partial<Record<NameRole, string>> = {
  area: 'area',
  layer: 'layer',
  medium: 'medium',
  pigment: 'paint, mix or material',
  paint: 'paint, mix or material',
  liquid: 'paint, mix or material',
};

/** A name that is declared nowhere, or declared as something that cannot stand where it is used. */
export const unknownName: Rule = {
  id: 'unknown-name',
  title: 'Name not declared',
  theme: 'language',
  severity: 'error',
  why: 'A plan computes only with what it declares: paints, mediums, mixes, areas and layers. A name that is declared nowhere is mostly a slip of the pen.',
  whatToDo: 'Correct the name, declare it, or bring it in with use.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    let lists = 0;
    // paints and mediums may stand in a file that another finding calls unread: nobody can tell that they do not
    const unread = plan.uses.some((u) => u.status !== 'read' && u.status !== 'cycle');
    for (const use of plan.names) {
      const { role, ingredient, layer, place, name } = use;
      const what = WHAT[role];
      if (!what) continue;
      const is = ingredient?.is;
      // what its own declaration is told already
      const like = plan.visible.pigments.get(name)?.like?.is.kind;
      if (is?.kind === 'misplaced' && (like === undefined || like === 'misplaced'))
        yield { message: `${quoted(name)} is ${is.found}; here stands ${is.expected}.`, place, layer };
      const unknown = is ? is.kind === 'unknown-name' : !use.kind;
      if (!unknown || (unread && role !== 'area' && role !== 'layer')) continue;
      const instead = (): string => {
        const all = declaredFor(plan, role);
        const none = all.length === 0 && !use.near?.length;
        return !none ? thereIs(name, all, use.near) : ingredient ? '' : ` No ${what} is declared.`;
      };
      yield {
        message: `There is no ${what} ${quoted(name)} here.${lists++ < MOST_LISTS ? instead() : ''}`,
        place,
        layer,
        fixes: replaceEach('Change to', place, use.near),
      };
    }
  },
};
