import type { NameUse, Plan } from '../../plan/plan.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { replaceEach } from '../shared/fixes.ts';
import { ingredients } from '../shared/ingredients.ts';
import { languageReference, quoted, thereIs } from '../shared/words.ts';

/** How many messages list what is declared: a text of nothing but unknown names must not take for ever. */
const MOST_LISTS = 200;

type What = 'area' | 'layer' | 'medium' | 'paint, mix or material';

function declaredAs(what: What, plan: Plan): readonly string[] {
  const { paints, mixes, mediums } = plan.visible;
  if (what === 'area') return plan.implicitArea ? [] : [...plan.areas, ...plan.groups].map((a) => a.name);
  if (what === 'layer') return plan.layers.map((l) => l.name);
  return what === 'medium' ? [...mediums.keys()] : [...paints.keys(), ...mixes.keys()];
}

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
    const instead = (what: What, use: NameUse & { readonly near?: readonly string[] }) => {
      const all = declaredAs(what, plan);
      return all.length === 0 && !use.near?.length
        ? what === 'paint, mix or material'
          ? ''
          : ` No ${what} is declared.`
        : thereIs(use.name, all, use.near);
    };
    const unknown = (
      what: What,
      use: NameUse & { readonly near?: readonly string[] },
      layer?: number,
    ): RuleReport => ({
      message: `There is no ${what} ${quoted(use.name)} here.${lists++ < MOST_LISTS ? instead(what, use) : ''}`,
      place: use.place,
      layer,
      fixes: replaceEach('Change to', use.place, use.near),
    });
    for (const { ingredient, layer } of ingredients(plan)) {
      if (ingredient.is.kind === 'unknown-name' && !unread)
        yield unknown('paint, mix or material', { ...ingredient, near: ingredient.is.near }, layer);
      // what its own declaration is told already
      const like = plan.visible.pigments.get(ingredient.name)?.like?.is.kind;
      if (ingredient.is.kind === 'misplaced' && (like === undefined || like === 'misplaced'))
        yield {
          message: `${quoted(ingredient.name)} is ${ingredient.is.found}; here stands ${ingredient.is.expected}.`,
          place: ingredient.place,
          layer,
        };
    }
    for (const g of plan.groups) for (const m of g.members) if (!m.known) yield unknown('area', m);
    for (const t of plan.targets) if (t.in && !t.in.known) yield unknown('area', t.in);
    for (const s of plan.samples) {
      if (s.in && !s.in.known) yield unknown('area', s.in);
      for (const row of s.layers) if (!row.layer.is) yield unknown('layer', row.layer);
    }
    for (const l of plan.layers) {
      for (const a of [
        ...l.on,
        ...l.except,
        ...l.wipeOut,
        ...l.measured.flatMap((m) => (m.in ? [m.in] : [])),
      ])
        if (!a.known) yield unknown('area', a, l.index);
      if (l.medium?.of && !l.medium.of.is && !unread) yield unknown('medium', l.medium.of, l.index);
    }
  },
};
