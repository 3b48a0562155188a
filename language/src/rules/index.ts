/** Every rule, in order of its id. Written by language/build/rules-index.ts from the folders; run it after adding one. */
import { abradeToxicLayer } from './adhesion/abrade-toxic-layer.ts';
import { acrylicOverOil } from './adhesion/acrylic-over-oil.ts';
import { asphaltBelow } from './adhesion/asphalt-below.ts';
import { beadingRisk } from './adhesion/beading-risk.ts';
import { brownCoalFilm } from './adhesion/brown-coal-film.ts';
import { groundUnsealed } from './adhesion/ground-unsealed.ts';
import { oilOutExcess } from './adhesion/oil-out-excess.ts';
import { oilOutLeftLast } from './adhesion/oil-out-left-last.ts';
import { residueAgent } from './adhesion/residue-agent.ts';
import { supportGroundMismatch } from './adhesion/support-ground-mismatch.ts';
import { unsoundPreparation } from './adhesion/unsound-preparation.ts';
import { varnishBetweenLayers } from './adhesion/varnish-between-layers.ts';
import { zincInFilm } from './adhesion/zinc-in-film.ts';
import { zincInGround } from './adhesion/zinc-in-ground.ts';
import { dryUnlikeEstimate } from './drying/dry-unlike-estimate.ts';
import { fastOverSlow } from './drying/fast-over-slow.ts';
import { filmTooThickForKind } from './drying/film-too-thick-for-kind.ts';
import { groundNotCured } from './drying/ground-not-cured.ts';
import { notReady } from './drying/not-ready.ts';
import { shortOpenTime } from './drying/short-open-time.ts';
import { slowUnderlayer } from './drying/slow-underlayer.ts';
import { thickFatFilm } from './drying/thick-fat-film.ts';
import { varnishTooEarly } from './drying/varnish-too-early.ts';
import { fatColourLow } from './fat-and-lean/fat-colour-low.ts';
import { leanOverFat } from './fat-and-lean/lean-over-fat.ts';
import { tooMuchMedium } from './fat-and-lean/too-much-medium.ts';
import { tooMuchSolvent } from './fat-and-lean/too-much-solvent.ts';
import { underbound } from './fat-and-lean/underbound.ts';
import { effectNotReached } from './glazes/effect-not-reached.ts';
import { glazeCannotLighten } from './glazes/glaze-cannot-lighten.ts';
import { glazeHides } from './glazes/glaze-hides.ts';
import { glazeInvisible } from './glazes/glaze-invisible.ts';
import { measuredFarFromPredicted } from './glazes/measured-far-from-predicted.ts';
import { opaqueInGlaze } from './glazes/opaque-in-glaze.ts';
import { opaqueWhiteInGlaze } from './glazes/opaque-white-in-glaze.ts';
import { swatchInconsistent } from './glazes/swatch-inconsistent.ts';
import { targetMissed } from './glazes/target-missed.ts';
import { underlayerDrowned } from './glazes/underlayer-drowned.ts';
import { airUnknown } from './health/air-unknown.ts';
import { oilyRags } from './health/oily-rags.ts';
import { restrictedMaterial } from './health/restricted-material.ts';
import { toxicPigment } from './health/toxic-pigment.ts';
import { vapourOverLimit } from './health/vapour-over-limit.ts';
import { areaOver100 } from './language/area-over-100.ts';
import { areaUnpainted } from './language/area-unpainted.ts';
import { circularMix } from './language/circular-mix.ts';
import { dateOrder } from './language/date-order.ts';
import { duplicateName } from './language/duplicate-name.ts';
import { layerEmpty } from './language/layer-empty.ts';
import { missingField } from './language/missing-field.ts';
import { mixedAmounts } from './language/mixed-amounts.ts';
import { nameClashInUse } from './language/name-clash-in-use.ts';
import { notInPlan } from './language/not-in-plan.ts';
import { notInRecord } from './language/not-in-record.ts';
import { outOfRange } from './language/out-of-range.ts';
import { partsNot100 } from './language/parts-not-100.ts';
import { pigmentNeedsVariety } from './language/pigment-needs-variety.ts';
import { repeatedField } from './language/repeated-field.ts';
import { unknownMaterial } from './language/unknown-material.ts';
import { unknownName } from './language/unknown-name.ts';
import { unknownPigment } from './language/unknown-pigment.ts';
import { unknownRule } from './language/unknown-rule.ts';
import { unneededAllow } from './language/unneeded-allow.ts';
import { unusedDeclaration } from './language/unused-declaration.ts';
import { useCycle } from './language/use-cycle.ts';
import { useMissing } from './language/use-missing.ts';
import { useOutsideWorkspace } from './language/use-outside-workspace.ts';
import { darkensOrGreys } from './lasting/darkens-or-greys.ts';
import { fugitivePigment } from './lasting/fugitive-pigment.ts';
import { incompatiblePair } from './lasting/incompatible-pair.ts';
import { notInPeriod } from './lasting/not-in-period.ts';
import { madeRangeEmpty } from './records/made-range-empty.ts';
import { sampleOrderConflict } from './records/sample-order-conflict.ts';
import { sampleThicknessOutside } from './records/sample-thickness-outside.ts';
import { sampleWrongArea } from './records/sample-wrong-area.ts';
import type { Rule } from './rule.ts';

/** Every rule, with its words, its sources and its check. */
export const rules: readonly Rule[] = [
  abradeToxicLayer,
  acrylicOverOil,
  airUnknown,
  areaOver100,
  areaUnpainted,
  asphaltBelow,
  beadingRisk,
  brownCoalFilm,
  circularMix,
  darkensOrGreys,
  dateOrder,
  dryUnlikeEstimate,
  duplicateName,
  effectNotReached,
  fastOverSlow,
  fatColourLow,
  filmTooThickForKind,
  fugitivePigment,
  glazeCannotLighten,
  glazeHides,
  glazeInvisible,
  groundNotCured,
  groundUnsealed,
  incompatiblePair,
  layerEmpty,
  leanOverFat,
  madeRangeEmpty,
  measuredFarFromPredicted,
  missingField,
  mixedAmounts,
  nameClashInUse,
  notInPeriod,
  notInPlan,
  notInRecord,
  notReady,
  oilOutExcess,
  oilOutLeftLast,
  oilyRags,
  opaqueInGlaze,
  opaqueWhiteInGlaze,
  outOfRange,
  partsNot100,
  pigmentNeedsVariety,
  repeatedField,
  residueAgent,
  restrictedMaterial,
  sampleOrderConflict,
  sampleThicknessOutside,
  sampleWrongArea,
  shortOpenTime,
  slowUnderlayer,
  supportGroundMismatch,
  swatchInconsistent,
  targetMissed,
  thickFatFilm,
  tooMuchMedium,
  tooMuchSolvent,
  toxicPigment,
  underbound,
  underlayerDrowned,
  unknownMaterial,
  unknownName,
  unknownPigment,
  unknownRule,
  unneededAllow,
  unsoundPreparation,
  unusedDeclaration,
  useCycle,
  useMissing,
  useOutsideWorkspace,
  vapourOverLimit,
  varnishBetweenLayers,
  varnishTooEarly,
  zincInFilm,
  zincInGround,
];
