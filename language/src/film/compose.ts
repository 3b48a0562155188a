/**
 * Composition of a film from what it is mixed of. Every uncertain figure is read at both its ends together with the
 * others, and each result spans what these readings give. One oil absorption serves paste and critical concentration
 * within a reading, so a hungry pigment does not look lean only because nobody knows exactly how hungry it is.
 */
import { type Interval, plus } from '../materials/interval.ts';
import type { Composition } from './composition.ts';
import type { FilmInput } from './input.ts';
import { type Mixture, mixture } from './mixture.ts';
import { type Choice, type End, MIDDLE } from './paste.ts';
import { wetFilm } from './spread.ts';

const BOTH: readonly End[] = [-1, 1];
const NEITHER: readonly End[] = [0];

/** The readings worth making: an end only where something in the input has two ends. */
function choices(input: FilmInput): Choice[] {
  const binders = [
    ...input.pastes.map((p) => p.paste.binder),
    ...(input.medium?.parts.flatMap((p) => (p.liquid.kind === 'binder' ? [p.liquid.binder] : [])) ?? []),
  ];
  const oil = input.pastes.some((p) => p.paste.pigments.length > 0);
  const stiff = input.pastes.some((p) => !p.paste.oil || p.paste.oil.low < p.paste.oil.high);
  const solids = binders.some((b) => b.solids.low < b.solids.high);
  const share = input.mediumShare.low < input.mediumShare.high;
  const wiped = (input.residues?.length ?? 0) > 0;
  const found: Choice[] = [];
  for (const oilAbsorption of oil ? BOTH : NEITHER)
    for (const stiffness of stiff ? BOTH : NEITHER)
      for (const solid of solids ? BOTH : NEITHER)
        for (const mediumShare of share ? BOTH : NEITHER)
          for (const residue of wiped ? BOTH : NEITHER)
            found.push({ oilAbsorption, stiffness, solids: solid, mediumShare, residue });
  return found;
}

function span(likely: Mixture, others: readonly Mixture[], f: (m: Mixture) => number): Interval {
  const middle = f(likely);
  let low = middle;
  let high = middle;
  for (const m of others) {
    const value = f(m);
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, likely: middle, high };
}

const solids = (m: Mixture): number => m.pigment + m.binder;
/** Paint alone, without what was wiped on before it. */
const paint = (m: Mixture): number => solids(m) - m.residue;
const whole = (m: Mixture): number => paint(m) + m.volatile;
const pvc = (m: Mixture): number => m.pigment / solids(m);
const critical = (m: Mixture): number => (m.pigment > 0 ? m.pigment / (m.pigment + m.absorbed) : 1);
const lambda = (m: Mixture): number => pvc(m) / critical(m);
const volumeSolids = (m: Mixture): number => paint(m) / whole(m);

/**
 * The film, or undefined where nothing stays on the support (solvent alone, no amounts at all). `likelyOnly`: its ends are
 * not wanted, and are what is likely.
 */
export function compose(input: FilmInput, likelyOnly = false): Composition | undefined {
  const likely = mixture(input, MIDDLE);
  if (!likely) return undefined;
  const readings = (likelyOnly ? [] : choices(input)).flatMap((choice) => mixture(input, choice) ?? []);
  const over = (f: (m: Mixture) => number): Interval => span(likely, readings, f);

  const vs = over(volumeSolids);
  const { dryFilm } = input;
  const residue = over((m) => m.residueFilm);
  const pasteVolume = input.pastes.reduce((sum, p) => sum + p.volume, 0);
  return {
    pigments: [...likely.pigments.keys()].map((pigment) => ({
      pigment,
      volumeFraction: over((m) => (m.pigments.get(pigment)?.volume ?? 0) / solids(m)),
      massFraction: over((m) => (m.pigments.get(pigment)?.mass ?? 0) / m.solidMass),
    })),
    binders: [...likely.binders.keys()].map((binder) => ({
      binder,
      volumeFraction: over((m) => (m.binders.get(binder) ?? 0) / solids(m)),
    })),
    volatiles: [...likely.volatiles.keys()].map((solvent) => ({
      solvent,
      volumeFraction: over((m) => (m.volatiles.get(solvent) ?? 0) / whole(m)),
    })),
    pvc: over(pvc),
    paintPvc: over((m) => m.pigment / paint(m)),
    cpvc: over(critical),
    lambda: over(lambda),
    fatness: over((m) => 1 - lambda(m)),
    volumeSolids: vs,
    wetFilm: {
      low: wetFilm(dryFilm.low, vs.high),
      likely: wetFilm(dryFilm.likely, vs.likely),
      high: wetFilm(dryFilm.high, vs.low),
    },
    dryFilm: plus(dryFilm, residue),
    residue,
    mediumShare: over((m) => m.mediumShare),
    mediumSolids: likely.mediumSolids,
    wetDensity: over((m) => m.mass / whole(m)),
    applied: [
      ...input.pastes.flatMap(({ paste, volume }) =>
        volume > 0
          ? [
              {
                what: 'paint' as const,
                name: paste.name,
                share: ((1 - likely.mediumShare) * volume) / pasteVolume,
              },
            ]
          : [],
      ),
      ...(input.medium && likely.mediumShare > 0
        ? [{ what: 'medium' as const, name: input.medium.name, share: likely.mediumShare }]
        : []),
    ],
  };
}

/** A film with more pigment than its binder can fill. */
export const underbound = (composition: Composition): boolean => composition.lambda.likely > 1;
