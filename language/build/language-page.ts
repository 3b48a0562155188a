/** Fills the tables of language/docs/language.md from the lists of words and materials: `node language/build/language-page.ts`. */
import { pathToFileURL } from 'node:url';
import { materialNames, type Role } from '../src/materials/catalogue.ts';
import { filmWords } from '../src/materials/film-words.ts';
import { families } from '../src/syntax/families.ts';
import { HAZARDS } from '../src/syntax/fields.ts';
import { declarationWords, fieldsOf, joiningWords, nameableWords, type Word } from '../src/syntax/words.ts';
import { code, fill, refill, table } from './page.ts';

export const LANGUAGE_PAGE = new URL('../docs/language.md', import.meta.url);

const words = (list: readonly Word[]) =>
  table(
    ['word', 'what it is', 'takes', 'for instance'],
    list.map((w) => [
      `${code(w.word)}${w.only ? ` (${w.only}s only)` : ''}${w.repeatable ? ', any number' : ''}`,
      w.about,
      w.takes,
      code(w.example),
    ]),
  );

const UNIT_WORDS: Record<keyof typeof families, string> = {
  film: 'thickness of a film',
  size: 'size of the support',
  days: 'waiting',
  hours: 'a sitting, light in a year',
  share: 'share, oil, humidity',
  temperature: 'temperature',
  room: 'room',
  tube: 'what a tube holds',
  lux: 'light',
  oilAbsorption: 'oil absorption',
  density: 'density',
  count: 'coats, air changes, ΔE00',
};

const units = () =>
  table(
    ['for', 'units', 'kept as'],
    Object.entries(families).map(([name, f]) => [
      UNIT_WORDS[name as keyof typeof families],
      Object.keys(f.units).map(code).join(' ') || 'none',
      f.unit || 'a bare number',
    ]),
  );

const films = () =>
  table(
    ['word', 'dry film of one coat'],
    Object.entries(filmWords).map(([w, f]) => [code(w), `${f.low}–${f.high} µm`]),
  );

const ROLES: Record<Role, string> = {
  binder: 'after `in`',
  medium: 'in a `medium`',
  resin: '`resin`',
  support: '`support`',
  ground: '`material`',
  agent: '`prepare … with`',
};

const materials = () =>
  table(
    ['where', 'names'],
    (Object.keys(ROLES) as Role[]).map((r) => [ROLES[r], materialNames(r).map(code).join(' ')]),
  );

const TABLES: Record<string, () => string> = {
  declarations: () => words(declarationWords),
  'layer-fields': () => words(fieldsOf('layer')),
  'studio-fields': () => words(fieldsOf('studio')),
  'pigment-fields': () => words(fieldsOf('pigment')),
  joining: () =>
    `${joiningWords.map(code).join(' ')}; usable as names nevertheless: ${nameableWords.map(code).join(' ')}`,
  hazards: () => `\`hazard\` takes one or more of ${HAZARDS.map(code).join(', ')}.`,
  units,
  films,
  materials,
};

/** The page with every table between its markers written anew. Throws on a marker it does not know. */
export const filled = (page: string): string => fill(page, TABLES);

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) refill(LANGUAGE_PAGE, filled);
