/** Every rule, in order of its id. The one table. */
import { abradeToxicLayer } from './abrade-toxic-layer.ts';
import { acrylicOverOil } from './acrylic-over-oil.ts';
import { airUnknown } from './air-unknown.ts';
import { areaOver100 } from './area-over-100.ts';
import { areaUnpainted } from './area-unpainted.ts';
import { asphaltBelow } from './asphalt-below.ts';
import { beadingRisk } from './beading-risk.ts';
import { brownCoalFilm } from './brown-coal-film.ts';
import { circularMix } from './circular-mix.ts';
import { darkensOrGreys } from './darkens-or-greys.ts';
import { dateOrder } from './date-order.ts';
import { duplicateName } from './duplicate-name.ts';
import { fastOverSlow } from './fast-over-slow.ts';
import { fatColourLow } from './fat-colour-low.ts';
import { filmTooThickForKind } from './film-too-thick-for-kind.ts';
import { fugitivePigment } from './fugitive-pigment.ts';
import { glazeCannotLighten } from './glaze-cannot-lighten.ts';
import { glazeHides } from './glaze-hides.ts';
import { glazeInvisible } from './glaze-invisible.ts';
import { groundNotCured } from './ground-not-cured.ts';
import { groundUnsealed } from './ground-unsealed.ts';
import { incompatiblePair } from './incompatible-pair.ts';
import { layerEmpty } from './layer-empty.ts';
import { leanOverFat } from './lean-over-fat.ts';
import { madeRangeEmpty } from './made-range-empty.ts';
import { measuredFarFromPredicted } from './measured-far-from-predicted.ts';
import { missingField } from './missing-field.ts';
import { mixedAmounts } from './mixed-amounts.ts';
import { nameClashInUse } from './name-clash-in-use.ts';
import { notInPeriod } from './not-in-period.ts';
import { notInPlan } from './not-in-plan.ts';
import { notInRecord } from './not-in-record.ts';
import { notReady } from './not-ready.ts';
import { oilOutExcess } from './oil-out-excess.ts';
import { oilOutLeftLast } from './oil-out-left-last.ts';
import { oilyRags } from './oily-rags.ts';
import { opaqueInGlaze } from './opaque-in-glaze.ts';
import { opaqueWhiteInGlaze } from './opaque-white-in-glaze.ts';
import { outOfRange } from './out-of-range.ts';
import { partsNot100 } from './parts-not-100.ts';
import { pigmentNeedsVariety } from './pigment-needs-variety.ts';
import { repeatedField } from './repeated-field.ts';
import { residueAgent } from './residue-agent.ts';
import { restrictedMaterial } from './restricted-material.ts';
import type { Rule } from './rule.ts';
import { sampleOrderConflict } from './sample-order-conflict.ts';
import { sampleThicknessOutside } from './sample-thickness-outside.ts';
import { sampleWrongArea } from './sample-wrong-area.ts';
import { shortOpenTime } from './short-open-time.ts';
import { slowUnderlayer } from './slow-underlayer.ts';
import { supportGroundMismatch } from './support-ground-mismatch.ts';
import { swatchInconsistent } from './swatch-inconsistent.ts';
import { targetMissed } from './target-missed.ts';
import { thickFatFilm } from './thick-fat-film.ts';
import { tooMuchMedium } from './too-much-medium.ts';
import { tooMuchSolvent } from './too-much-solvent.ts';
import { toxicPigment } from './toxic-pigment.ts';
import { underbound } from './underbound.ts';
import { underlayerDrowned } from './underlayer-drowned.ts';
import { unknownMaterial } from './unknown-material.ts';
import { unknownName } from './unknown-name.ts';
import { unknownPigment } from './unknown-pigment.ts';
import { unknownRule } from './unknown-rule.ts';
import { unneededAllow } from './unneeded-allow.ts';
import { unsoundPreparation } from './unsound-preparation.ts';
import { unusedDeclaration } from './unused-declaration.ts';
import { useCycle } from './use-cycle.ts';
import { useMissing } from './use-missing.ts';
import { useOutsideWorkspace } from './use-outside-workspace.ts';
import { vapourOverLimit } from './vapour-over-limit.ts';
import { varnishBetweenLayers } from './varnish-between-layers.ts';
import { varnishTooEarly } from './varnish-too-early.ts';
import { zincInFilm } from './zinc-in-film.ts';
import { zincInGround } from './zinc-in-ground.ts';

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
  duplicateName,
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
