/** Pigments that look like one another in general use: thick, let down with white, and as a glaze over white. */
import { allPigments } from '../materials/catalogue.ts';
import type { Pigment } from '../materials/types.ts';
import type { Lab } from '../optics/cie.ts';
import { deltaE00 } from '../optics/difference.ts';
import type { Paint } from '../optics/match.ts';
import { groundOf } from '../optics/spectrum.ts';
import { layOn, toColour } from '../optics/stack.ts';
import { GLOSS } from '../optics/surface.ts';
import { readPlan } from '../plan/read.ts';
import { isPoisonous, lasts, losses } from '../rules/shared/instead.ts';
import { study } from '../study/build.ts';
import { isSold } from '../study/stand-in.ts';
import { COVERING_UM, matchPaint, nowhere, PRIMED } from './single.ts';

/** A pigment that can be bought, and how far its colours are from those of the other: CIEDE2000. */
export interface Alike {
  readonly pigment: Pigment;
  readonly thick: number;
  /** one part of tube paint in nine of titanium white, by volume */
  readonly inWhite: number;
  /** 5 µm with half of it medium, over white */
  readonly glaze: number;
  readonly loses: readonly string[];
}

const GLAZE_UM = 5;
const WHITE_PARTS = 9;

type Look = readonly [thick: Lab, inWhite: Lab, glaze: Lab];

/**
 * The nearest pigments to one by the root of the mean square of the three differences: only such as last where it does
 * not, and are no poison where it is one; whites for whites alone. Empty where its colour cannot be predicted.
 */
export function alike(pigment: Pigment, count = 3): Alike[] {
  const nothing = study(readPlan('', nowhere.uri));
  const paint = (p: Pigment): Paint | undefined =>
    matchPaint(
      nothing,
      p.id,
      { name: p.id, place: nowhere, is: { kind: 'pigment', pigment: p } },
      undefined,
    )[0];
  const white = allPigments().find((p) => p.id === 'PW6');
  const whitePaint = white && paint(white);
  const look = (p: Paint): Look => {
    const film = (parts: readonly (readonly [Paint, number])[], thickness: number): Lab =>
      toColour(
        layOn(
          {
            pigments: parts.flatMap(([{ pigments, solids = 1 }, share]) =>
              pigments.map(({ optical, fraction }) => ({ optical, fraction: (fraction / solids) * share })),
            ),
            thickness,
          },
          groundOf(PRIMED, GLOSS),
        ),
        GLOSS,
      ).lab;
    const tenth = 1 / (1 + WHITE_PARTS);
    return [
      film([[p, 1]], COVERING_UM),
      film(
        whitePaint
          ? [
              [p, tenth],
              [whitePaint, 1 - tenth],
            ]
          : [[p, tenth]],
        COVERING_UM,
      ),
      film([[p, 0.5]], GLAZE_UM),
    ];
  };
  const own = paint(pigment);
  if (!own) return [];
  const wanted = look(own);
  const isWhite = (p: Pigment) => p.code?.startsWith('PW') === true;
  const filled = ({ pigments, solids = 1 }: Paint) => pigments.reduce((v, p) => v + p.fraction, 0) / solids;
  return allPigments()
    .filter((p) => p !== pigment && isSold(p) && isWhite(p) === isWhite(pigment))
    .filter((p) => (lasts(pigment) || lasts(p)) && (isPoisonous(pigment) ? !isPoisonous(p) : true))
    .flatMap((p) => {
      const made = paint(p);
      if (!made) return [];
      const [thick, inWhite, glaze] = look(made).map((lab, i) => deltaE00(wanted[i]!, lab)) as [
        number,
        number,
        number,
      ];
      return [
        { pigment: p, thick, inWhite, glaze, loses: losses(pigment, p, 'layer', filled(own) - filled(made)) },
      ];
    })
    .sort(
      (a, b) => a.thick ** 2 + a.inWhite ** 2 + a.glaze ** 2 - (b.thick ** 2 + b.inWhite ** 2 + b.glaze ** 2),
    )
    .filter((a, i, all) => all.findIndex((b) => b.pigment.code === a.pigment.code) === i)
    .slice(0, count);
}
