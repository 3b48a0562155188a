/**
 * A study as JSON, the public form (language/docs/study.schema.json). Intervals are {low, likely, high}; shares and
 * concentrations fractions of 1, lengths µm, times days, volumes ml, masses g, temperatures °C. Names may be added to
 * it, never changed. Figures are rounded (see `sensible`).
 */

import type { Plan } from '../plan/plan.ts';
import { factsJson, layerFacts, stated } from '../plan/stated.ts';
import type {
  Assumption,
  Calendar,
  CalendarEntry,
  Composition,
  LayerStudy,
  Study,
} from '../results/study.ts';
import { mixtures } from '../studio/parts.ts';
import { shopping } from '../studio/shopping.ts';
import { sittings } from '../studio/sittings.ts';
import { clocksOf } from '../studio/words.ts';
import type {
  AirJson,
  CalendarJson,
  CompositionJson,
  LayerJson,
  LimitJson,
  QuantitiesJson,
  StatedJson,
  StudyJson,
} from './json-types.ts';
import { sensible } from './sensible.ts';
import { tool } from './tool.ts';

const DAY = 86_400_000;
const iso = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);

const assumptions = (list: readonly Assumption[]): Assumption[] =>
  list.map(({ field, value, why, source }) => ({ field, value, why, ...(source ? { source } : {}) }));

const composition = (c: Composition): CompositionJson => ({
  pigments: c.pigments.map(({ pigment, volumeFraction, massFraction }) => ({
    id: pigment.id,
    code: pigment.code ?? null,
    variety: pigment.variety ?? null,
    volumeFraction,
    massFraction,
  })),
  binders: c.binders,
  volatiles: c.volatiles,
  pvc: c.pvc,
  cpvc: c.cpvc,
  lambda: c.lambda,
  fatness: c.fatness,
  volumeSolids: c.volumeSolids,
  wetFilm: c.wetFilm,
  dryFilm: c.dryFilm,
  residue: c.residue,
  mediumShare: c.mediumShare,
  mediumSolids: c.mediumSolids,
  wetDensity: c.wetDensity,
  applied: c.applied,
});

const layer = (l: LayerStudy): LayerJson => ({
  name: l.layer.name,
  kind: l.layer.kind,
  areas: l.areas,
  coats: l.coats,
  dryFilm: l.dryFilm ?? null,
  composition: l.composition ? composition(l.composition) : null,
  drying: l.drying
    ? {
        open: l.drying.open,
        touchDry: l.drying.touchDry,
        ready: l.drying.ready,
        firm: l.drying.firm,
        ...(l.drying.observed ? { observed: l.drying.observed } : {}),
      }
    : null,
  colour: l.colours().map(({ area, lab, hex, outOfGamut, radius, confidence, basis }) => ({
    area,
    lab,
    hex,
    outOfGamut,
    radius,
    confidence,
    basis,
  })),
  assumptions: assumptions(l.assumptions),
  stated: factsJson(layerFacts(l.layer)),
});

/** What a file says besides its layers. */
const statedJson = (plan: Plan): StatedJson[] =>
  [...stated(plan)]
    .filter((s) => !s.layer && (s.name !== '' || s.facts.length > 0))
    .map(({ word, name, facts, rows }) => ({
      word: word || 'file',
      name: name || null,
      fields: factsJson(facts),
      ...(rows ? { layers: rows.map((r) => ({ name: r.name, fields: factsJson(r.facts) })) } : {}),
    }));

/** Dates where the plan has any; else null, and only the days since the beginning. */
const entry = (e: CalendarEntry, { dated }: Calendar): CalendarJson => ({
  layer: e.layer,
  coat: e.coat,
  ...((dated && clocksOf(e, dated)) || { notBefore: null, likely: null, safeFrom: null }),
  notBeforeDay: e.notBefore ?? null,
  likelyDay: e.likely ?? null,
  safeFromDay: e.safeFrom ?? null,
  daysToSpare: e.daysToSpare ?? null,
  heldBy: e.heldBy ?? null,
  painted: e.painted === undefined ? null : iso(e.painted),
  notKnown: e.notKnown ? { layer: e.notKnown.layer, line: e.notKnown.line, column: e.notKnown.column } : null,
});

const limit = (
  of: { readonly ppm?: number; readonly mgPerM3?: number; readonly source: string } | undefined,
): LimitJson | null => (of ? { ppm: of.ppm ?? null, mgPerM3: of.mgPerM3 ?? null, source: of.source } : null);

function air({ air: a }: Study): AirJson | null {
  if (!a) return null;
  return {
    solvents: a.solvents.map((s) => ({
      name: s.name,
      grams: s.grams,
      ppm: s.ppm ?? null,
      mgPerM3: s.mgPerM3 ?? null,
      limit: limit(s.limit),
      ceiling: limit(s.ceiling),
      limits: s.limits.map(({ whose, hours, ppm, mgPerM3, source }) => ({
        whose,
        hours,
        ppm: ppm ?? null,
        mgPerM3: mgPerM3 ?? null,
        source: source.text,
        mark: source.mark,
      })),
    })),
    mixtureRatio: a.mixtureRatio ?? null,
    layer: a.layer ?? null,
    roomKnown: a.roomKnown,
    neededAirChanges: a.neededAirChanges ?? null,
    neededFreshAir: a.neededFreshAir ?? null,
    assumptions: assumptions(a.assumptions),
  };
}

function quantities(study: Study): QuantitiesJson | null {
  const q = study.quantities;
  if (!q) return null;
  const buying = shopping(study.plan, q);
  return {
    paints: q.paints.map(({ name, ml, g }) => ({ name, ml, g })),
    mediums: q.mediums.map(({ name, ml, ingredients }) => ({
      name,
      ml,
      ingredients: ingredients.map((i) => ({ name: i.name, ml: i.ml, g: i.g })),
    })),
    agents: q.agents.map(({ name, method, ml, stays }) => ({
      name,
      method,
      ml: ml ?? null,
      ...(stays ? { stays } : {}),
    })),
    sessions: q.sessions.map((s) => ({
      layer: s.layer,
      coat: s.coat,
      paints: s.paints.map(({ name, ml }) => ({ name, ml })),
      medium: s.medium ? { name: s.medium.name, ml: s.medium.ml } : null,
    })),
    mixtures: sittings(study.calendar).flatMap((s) =>
      mixtures(study, s.entries).map((m) => ({
        sitting: s.number,
        layers: m.layers,
        name: m.name ?? null,
        parts: m.portions.map(({ name, parts, share }) => ({ name, parts, share })),
        off: m.off,
        letDowns: m.letDowns,
        together: m.together,
        ml: m.ml ?? null,
        about: m.about ?? null,
        mediums: m.mediums.map(({ name, layers, share, parts, ml, about }) => ({
          name,
          layers,
          share,
          parts: { paint: parts[0], medium: parts[1] },
          ml: ml ?? null,
          about: about ?? null,
        })),
      })),
    ),
    shopping: {
      paints: buying.purchases.map(({ name, tube, assumed, tubes, cost }) => ({
        name,
        tube,
        assumed,
        tubes,
        cost: cost ?? null,
      })),
      costs: buying.costs,
    },
    assumptions: assumptions([...q.assumptions, ...buying.assumptions]),
  };
}

/**
 * Everything computed of a plan, as plain JSON values. `path` is how the file is named in it; `findings` are put in as
 * they are given (`checkedFile` gives those of `check --format json`). Colours and the calendar are computed here.
 */
export function studyJson<F>(study: Study, path: string, findings: readonly F[]): StudyJson<F> {
  const { plan } = study;
  return {
    version: '1',
    tool,
    path,
    kind: plan.kind,
    title: plan.title ?? null,
    ...sensible({
      stated: statedJson(plan),
      layers: study.layers.map(layer),
      areas: study.areas.map((area) => {
        const target = area.target();
        return {
          name: area.name,
          share: area.share,
          buildUp: area.buildUp().map(({ layer: name, colour }) => ({
            layer: name,
            lab: colour.lab,
            hex: colour.hex,
            outOfGamut: colour.outOfGamut,
            radius: colour.radius,
          })),
          target: target
            ? { lab: target.lab, css: target.css, deltaE00: target.deltaE00 ?? null, within: target.within }
            : null,
        };
      }),
      calendar: study.calendar.entries.map((e) => entry(e, study.calendar)),
      quantities: quantities(study),
      air: air(study),
      permanence: study.permanence.map((p) => ({
        layer: p.layer,
        pigment: p.pigment.id,
        lightfastness: p.lightfastness ?? null,
        source: p.source,
        years: p.years ?? null,
        note: p.note ?? null,
      })),
      cautions: study.cautions.map(({ hazard, title, where, text, source }) => ({
        hazard,
        title,
        where,
        text,
        source,
      })),
      assumptions: assumptions(study.assumptions),
    }),
    findings,
    sources: study.sources,
  };
}
