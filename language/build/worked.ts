/** The worked examples of language/docs/figures.md: one glaze followed with figures, each from the code that computes it. */
import { baseOf } from '../src/drying/base.ts';
import { FILM, OPEN, Q10, READY, SKIN } from '../src/drying/settings.ts';
import { absorbedVolume, cpvc, RUB_OUT_OIL_DENSITY } from '../src/film/cpvc.ts';
import { at, pasteFactor } from '../src/film/paste.ts';
import { createAnalyser } from '../src/index.ts';
import { binder, lookupPigment, solvent } from '../src/materials/catalogue.ts';
import type { Interval } from '../src/materials/interval.ts';
import type { Pigment } from '../src/materials/types.ts';
import { opticalData } from '../src/optics/data.ts';
import { MU_BEAM } from '../src/optics/plate.ts';
import { GLOSS } from '../src/optics/surface.ts';
import { CONES, filmOverGround, leaving, sentBack } from '../src/optics/transport.ts';
import { wavelengths } from '../src/optics/wavelengths.ts';
import { doseOf } from '../src/permanence/permanence.ts';
import type { LayerStudy, Study } from '../src/results/study.ts';
import { BRUSHES, MIXING, WASTE } from '../src/studio/settings.ts';
import { concentration, MOLAR_VOLUME } from '../src/studio/vapour.ts';
import { clocksWords } from '../src/studio/words.ts';

/** A figure to so many digits that count, as a reader would copy it. */
export const figure = (x: number, digits = 3): string => {
  const text = Number(x.toPrecision(digits)).toString();
  const missing = digits - text.replace(/^-?0?\.?0*|\./g, '').length;
  return missing > 0 && text.includes('.') ? text + '0'.repeat(missing) : text;
};
const percent = (x: number): string => figure(100 * x);

const block = (rows: readonly (readonly [label: string, words: string])[]): string => {
  const wide = Math.max(...rows.map(([label]) => label.length));
  return ['```text', ...rows.map(([label, words]) => `${label.padEnd(wide)}  ${words}`), '```'].join('\n');
};

function found<T>(thing: T | undefined, name: string): T {
  if (thing === undefined) throw new Error(`the example has no ${name}`);
  return thing;
}

export interface Example {
  readonly study: Study;
  readonly glaze: LayerStudy;
  readonly pigment: Pigment;
}

/** The plan shown on the page, studied. */
export function example(text: string): Example {
  const { study } = createAnalyser()(text, 'file:///example.paintplan');
  const looked = lookupPigment('PB29');
  if (looked.kind !== 'found') throw new Error('the example has no ultramarine');
  const glaze = found(
    study.layers.find((l) => l.layer.name === 'evening'),
    'glaze',
  );
  return { study, glaze, pigment: looked.pigment };
}

/** cm³ in 100 g of the pigment's paste, and in 1 ml as laid. */
function volumes({ pigment }: Example) {
  const whole = 100 / at(pigment.density, 0);
  const gaps = 100 * absorbedVolume(at(pigment.oilAbsorption, 0));
  const oil = pasteFactor(pigment, 0) * gaps;
  const share = whole / (whole + oil);
  return { whole, gaps, oil, share };
}

export function film(e: Example): string {
  const { density, oilAbsorption } = e.pigment;
  const c = found(e.glaze.composition, 'film');
  const { whole, gaps, oil, share } = volumes(e);
  const [rho, absorbs] = [at(density, 0), at(oilAbsorption, 0)];
  const solid = 0.4 * (1 - share) + 0.3;
  const laid = 0.4 * share;
  const vs = c.volumeSolids.likely;
  return block([
    ['density', `${density.low} to ${density.high} g/cm³, middle ${figure(rho)}`],
    [
      'oil absorption',
      `${oilAbsorption.low} to ${oilAbsorption.high} g per 100 g, middle ${figure(absorbs)}`,
    ],
    ['100 g of pigment', `100 ÷ ${figure(rho)} = ${figure(whole, 4)} cm³`],
    ['oil in its gaps', `${figure(absorbs)} ÷ ${RUB_OUT_OIL_DENSITY} = ${figure(gaps, 4)} cm³`],
    [
      'CPVC',
      `100 × ${figure(whole, 4)} ÷ (${figure(whole, 4)} + ${figure(gaps, 4)}) = ${percent(cpvc(absorbs, rho))} %`,
    ],
    ['oil in the paste', `${pasteFactor(e.pigment, 0)} × ${figure(gaps, 4)} = ${figure(oil, 4)} cm³`],
    [
      'pigment in 1 ml of paint',
      `${figure(whole, 4)} ÷ (${figure(whole, 4)} + ${figure(oil, 4)}) = ${figure(share)} ml`,
    ],
    ['pigment in 1 ml as laid', `0.4 × ${figure(share)} = ${figure(laid)} ml`],
    ['oil in 1 ml as laid', `0.4 × (1 − ${figure(share)}) + 0.6 × 0.5 = ${figure(solid)} ml`],
    [
      'turpentine in 1 ml as laid',
      `0.6 × 0.5 = ${figure(found(c.volatiles[0], 'spirit').volumeFraction.likely, 2)} ml`,
    ],
    ['volume solids', `${figure(laid)} + ${figure(solid)} = ${figure(vs)}`],
    ['PVC', `100 × ${figure(laid)} ÷ ${figure(vs)} = ${percent(c.pvc.likely)} %`],
    ['Λ', `${percent(c.pvc.likely)} ÷ ${percent(c.cpvc.likely)} = ${figure(c.lambda.likely)}`],
    [
      'fatness',
      `1 − ${figure(c.lambda.likely)} = ${figure(c.fatness.likely)}, from ${figure(c.fatness.low)} to ${figure(c.fatness.high)}`,
    ],
    ['wet film', `${c.dryFilm.likely} ÷ ${figure(vs)} = ${figure(c.wetFilm.likely)} µm`],
  ]);
}

const days = (x: Interval): string => `${figure(x.low)} to ${figure(x.high)} days`;

export function drying({ study, glaze }: Example): string {
  const c = found(glaze.composition, 'film');
  const d = found(glaze.drying, 'drying');
  const base = (id: string) => found(baseOf(found(binder(id), id)), id);
  const [linseed, stand] = [base('linseed'), base('stand-oil')];
  const share = (id: string) =>
    found(
      c.binders.find((b) => b.binder === id),
      id,
    ).volumeFraction.likely;
  const [a, b] = [share('linseed'), share('stand-oil')];
  const part = a / (a + b);
  const blend = 1 / (part / linseed.likely + (1 - part) / stand.likely);
  const skin = (FILM.thinnest / FILM.reference) ** SKIN.likely;
  const warmth = Q10.likely ** 0.2;
  const entry = found(
    study.calendar.entries.find((x) => x.layer === 'evening'),
    'date',
  );
  return block([
    ['linseed alone', `√(${linseed.low} × ${linseed.high}) = ${figure(linseed.likely)} days`],
    ['stand oil alone', `√(${stand.low} × ${stand.high}) = ${figure(stand.likely)} days`],
    ['linseed in the binder', `${figure(a)} ÷ (${figure(a)} + ${figure(b)}) = ${figure(part)}`],
    [
      'both',
      `1 ÷ (${figure(part)} ÷ ${figure(linseed.likely)} + ${figure(1 - part)} ÷ ${figure(stand.likely)}) = ${figure(blend)} days`,
    ],
    ['pigment', 'ultramarine counts as neutral: 1'],
    [
      'film',
      `8 µm counts as ${FILM.thinnest}: (${FILM.thinnest} ÷ ${FILM.reference}) ^ ${SKIN.likely} = ${figure(skin)}`,
    ],
    ['warmth', `${Q10.likely} ^ ((20 − 18) ÷ 10) = ${figure(warmth)}`],
    [
      'touch-dry',
      `${figure(blend)} × 1 × ${figure(skin)} × ${figure(warmth)} = ${figure(d.touchDry.likely)} days, from ${days(d.touchDry)}`,
    ],
    [
      'open',
      `${OPEN.likely} × ${figure(d.touchDry.likely)} = ${figure(d.open.likely)} days, from ${days(d.open)}`,
    ],
    [
      'ready',
      `${READY.likely} × ${figure(d.touchDry.likely)} = ${figure(d.ready.likely)} days, from ${days(d.ready)}`,
    ],
    ['calendar', clocksWords(entry, true)],
  ]);
}

const BAND = wavelengths.indexOf(550);

export function colour({ study, glaze, pigment }: Example): string {
  const c = found(glaze.composition, 'film');
  const optical = found(opticalData(pigment.id), 'optical data');
  const below = found(study.beneath('sky', glaze.layer.index), 'colour beneath');
  const above = found(study.beneath('sky'), 'colour above');
  const v = c.pvc.likely;
  const x = c.dryFilm.likely;
  const [a, s, g] = [optical.a[BAND]!, optical.s[BAND]!, sentBack(below.stack)[BAND]!];
  const [ax, sx] = [a * v * x, s * v * x];
  const tau = ax + sx;
  const { k1 } = GLOSS;
  const straight = Math.exp(-tau / MU_BEAM);
  const leaves = CONES.reduce((sum, c) => sum + c.share * (1 - c.turned) * Math.exp(-tau / c.mu), 0);
  const again = CONES.reduce((sum, c) => sum + c.share * c.turned * Math.exp((-2 * tau) / c.mu), 0);
  const clear = ((1 - k1) * straight * g * leaves) / (1 - g * again);
  if (Math.abs(clear - filmOverGround(tau, 0, g)) > 1e-9) throw new Error('the formula is not the model');
  const f = (y: number) => figure(y, 4);
  const [grey, seen] = ['grey', 'evening'].map((name) =>
    found(
      found(
        study.layers.find((l) => l.layer.name === name),
        name,
      )
        .colours()
        .find((on) => on.area === 'sky'),
      'colour',
    ),
  );
  const lab = (on: typeof seen) =>
    `L* ${Math.round(on!.lab[0])}, a* ${Math.round(on!.lab[1])}, b* ${Math.round(on!.lab[2])}`.replaceAll(
      '-',
      '−',
    );
  return block([
    ['a, s at 550 nm', `${f(a)} and ${f(s)} per µm of ultramarine (class ${optical.confidence})`],
    ['a·X', `${f(a)} × ${f(v)} × ${x} = ${f(ax)}`],
    ['s·X', `${f(s)} × ${f(v)} × ${x} = ${f(sx)}`],
    ['grey beneath', `Rg ${f(g)}, inside the paint`],
    ['straight in', `e^(−${f(tau)} ÷ ${f(MU_BEAM)}) = ${f(straight)}`],
    [
      'out of the cones',
      `${CONES.map((c) => `${f(c.share)} × (1 − ${f(c.turned)}) × e^(−${f(tau)} ÷ ${f(c.mu)})`).join(' + ')} = ${f(leaves)}`,
    ],
    [
      'down and up again',
      `${CONES.map((c) => `${f(c.share)} × ${f(c.turned)} × e^(−2 × ${f(tau)} ÷ ${f(c.mu)})`).join(' + ')} = ${f(again)}`,
    ],
    [
      'seen, were it clear',
      `(1 − ${f(k1)}) × ${f(straight)} × ${f(g)} × ${f(leaves)} ÷ (1 − ${f(g)} × ${f(again)}) = ${figure(clear)}`,
    ],
    ['with its scattering', `${figure(filmOverGround(ax, sx, g))} over an even grey`],
    [
      'in the study',
      `${figure(leaving(above.stack, GLOSS)[BAND]!)} over the grey film as it sends light back`,
    ],
    ['all 31 bands, before', `${lab(grey)} ± ${grey!.radius.toFixed(1)} (class ${grey!.confidence})`],
    ['all 31 bands, after', `${lab(seen)} ± ${seen!.radius.toFixed(1)} (class ${seen!.confidence})`],
  ]);
}

export function amounts(e: Example): string {
  const c = found(e.glaze.composition, 'film');
  const { whole, oil } = volumes(e);
  const area = 0.4 * 0.5 * 0.7;
  const ml = area * c.wetFilm.likely * (1 + WASTE);
  const linseed = at(found(binder('linseed'), 'linseed').density, 0);
  const density = (100 + oil * linseed) / (whole + oil);
  const paint = found(
    e.study.quantities?.paints.find((p) => p.name === 'blue'),
    'paint',
  );
  return block([
    ['area', `0.4 × 0.5 × 0.7 = ${figure(area)} m²`],
    ['laid', `${figure(area)} × ${figure(c.wetFilm.likely)} = ${figure(area * c.wetFilm.likely)} ml`],
    ['with waste', `1.25 × ${figure(area * c.wetFilm.likely)} = ${figure(ml)} ml`],
    ['blue', `0.4 × ${figure(ml)} = ${figure(paint.ml.likely)} ml`],
    ['rich', `0.6 × ${figure(ml)} = ${figure(0.6 * ml)} ml`],
    [
      'density of blue',
      `(100 + ${figure(oil, 4)} × ${figure(linseed)}) ÷ (${figure(whole, 4)} + ${figure(oil, 4)}) = ${figure(density)} g/ml`,
    ],
    [
      'mass of blue',
      `${figure(paint.ml.likely)} × ${figure(density)} = ${figure(paint.g.likely)} g, from ${figure(paint.g.low)} to ${figure(paint.g.high)} g`,
    ],
  ]);
}

export function air({ study, glaze }: Example): string {
  const c = found(glaze.composition, 'film');
  const turpentine = found(solvent('turpentine'), 'turpentine');
  const [rho, mol] = [at(turpentine.density, 0), at(found(turpentine.molarMass, 'molar mass'), 0)];
  const told = found(study.air, 'air');
  const row = found(told.solvents[0], 'solvent');
  if (told.layer !== 'evening') throw new Error('the example’s worst sitting is another');
  const ml = 0.14 * c.wetFilm.likely * (1 + WASTE);
  const spirit = 0.3 * ml;
  const mg = 1000 * (spirit + BRUSHES.likely) * rho;
  const at3 = (2 / MIXING.likely) * 3;
  const c3 = found(concentration(mg, 3, { volume: 30, airChanges: 2 }, MIXING.likely), 'concentration');
  const ppm = found(row.ppm, 'ppm');
  const limit = found(row.limit?.ppm, 'limit');
  return block([
    ['from the paint', `0.3 × ${figure(ml)} = ${figure(spirit)} ml of turpentine`],
    [
      'with the brush jar',
      `(${figure(spirit)} + ${BRUSHES.likely}) × ${rho} = ${figure(row.grams.likely)} g`,
    ],
    ['sealed room', `1000 × ${figure(row.grams.likely)} ÷ 30 = ${figure(mg / 30)} mg/m³`],
    ['a·t', `2 ÷ √(3) × 3 = ${figure(at3)}`],
    [
      'at the end of the session',
      `${figure(mg / 30)} × (1 − exp(−${figure(at3)})) ÷ ${figure(at3)} = ${figure(c3)} mg/m³`,
    ],
    [
      'in ppm',
      `${figure(c3)} × ${MOLAR_VOLUME} ÷ ${mol} = ${figure(ppm.likely)}, from ${figure(ppm.low)} to ${figure(ppm.high)}`,
    ],
    ['against the limit', `${figure(ppm.likely)} ÷ ${limit} = ${figure(ppm.likely / limit)}`],
  ]);
}

export function fading({ study }: Example): string {
  const entry = found(
    study.permanence.find((p) => p.layer === 'blush'),
    'fading colour',
  );
  const years = found(entry.years, 'years');
  const dose = doseOf(found(entry.lightfastness, 'class') as 'III');
  return block([
    ['class', `${entry.lightfastness}, taken as blue wool 4 to 5`],
    ['dose', `√(${dose.low} × ${dose.high}) = ${figure(dose.likely)} Mlx·h`],
    ['light of a year', '150 × 3000 ÷ 1000000 = 0.45 Mlx·h'],
    [
      'years',
      `${figure(dose.likely)} ÷ 0.45 = ${figure(years.likely)}, from ${figure(years.low)} to ${figure(years.high)}`,
    ],
  ]);
}
