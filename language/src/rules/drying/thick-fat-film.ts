import type { Fix, Layer } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { isOilFilm } from '../shared/films.ts';
import { FAT_FILM, isThickAndFat } from '../shared/limits.ts';
import { fatness, figure, labelAtStart, ours, practice } from '../shared/words.ts';

/** The same film in as many coats as keep each below the limit; none where coats are written already. */
function inCoats(layer: Layer): Fix[] {
  const { film, coats, insertField } = layer;
  if (film?.given !== 'exact' || coats || !insertField || layer.prepare.length === 0) return [];
  const n = Math.floor(film.value.likely / FAT_FILM.film) + 1;
  const each = Math.round(film.value.likely / n);
  if (n > 4 || each >= FAT_FILM.film) return [];
  return [
    {
      title: `Lay it in ${n} coats of ${each} µm`,
      edits: [
        { place: film.place, text: `${each} µm` },
        { place: insertField.place, text: `${insertField.before}coats ${n}${insertField.after}` },
      ],
    },
  ];
}

/** A fat film laid thick in one coat. */
export const thickFatFilm: Rule = {
  id: 'thick-fat-film',
  title: 'Fat film laid thick',
  theme: 'drying',
  severity: 'warning',
  why: 'Oil swells as it takes up oxygen, from the surface down. A thick fat film skins over while it is wet below, and the skin wrinkles.',
  whatToDo: 'Lay it in several thin coats, or take less medium.',
  sources: [
    practice('fat paint is laid thin; thick paint is laid lean'),
    ours('told from fatness 40 % and 40 µm a coat'),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l) {
    if (!isOilFilm(l) || l.layer.kind === 'varnish' || !isThickAndFat(l.composition)) return;
    const { fatness: fat, dryFilm } = l.composition;
    yield {
      message: `${labelAtStart(l.layer)} is fat (fatness ${fatness(fat.likely)}) and ${figure(dryFilm.likely)} µm thick in one coat: it skins over and wrinkles. Lay it in thin coats, or take less medium.`,
      place: l.layer.film?.place ?? l.layer.namePlace,
      layer: l.layer.index,
      severity: fat.low >= FAT_FILM.fatness && dryFilm.low >= FAT_FILM.film ? 'warning' : 'info',
      fixes: inCoats(l.layer),
    };
  },
};
