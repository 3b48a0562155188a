import type { Rule } from '../rule.ts';
import { labelAtStart, languageReference } from '../shared/words.ts';

/** A layer that says nothing of what it is, or lies nowhere. */
export const layerEmpty: Rule = {
  id: 'layer-empty',
  title: 'Layer made of nothing',
  theme: 'language',
  severity: 'warning',
  why: 'A layer without colour, medium, material or resin has no composition, dries in no time and changes no colour.',
  whatToDo: 'Say what it is made of: colour, medium, material or resin; in a record, colour unknown.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *checkLayer({ layer: l }) {
    const made =
      l.colour ||
      l.material ||
      l.resin ||
      l.medium ||
      l.fields.some((f) => ['colour', 'material', 'resin', 'medium'].includes(f.name));
    if (!made && l.kind !== 'varnish')
      yield {
        message: `${labelAtStart(l)} does not say what it is made of. Give it a colour or a material.`,
        place: l.namePlace,
        layer: l.index,
      };
    else if (l.areas.length === 0 && (l.on.length === 0 || l.on.some((a) => a.known)))
      yield {
        message: `${labelAtStart(l)} lies nowhere: what is excepted takes away all of it.`,
        place: l.namePlace,
        layer: l.index,
      };
  },
};
