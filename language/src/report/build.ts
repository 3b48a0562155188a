/** The whole report on a plan or a record, as blocks. */
import { hexOf } from '../optics/css.ts';
import type { Study } from '../results/study.ts';
import type { Finding } from '../rules/rule.ts';
import type { Block, Part, Report } from './document.ts';
import { words } from './document.ts';
import { type Extent, notDrawn, WHOLE } from './extent.ts';
import { fatnessLadders } from './ladder.ts';
import { largest } from './markup.ts';
import * as parts from './parts.ts';
import { sectionDrawing } from './section.ts';
import { spectraDrawing } from './spectra.ts';
import { buildUpStrips } from './strips.ts';

function subtitle(study: Study): string {
  const { plan } = study;
  const size =
    plan.support?.height && plan.support.width
      ? `, ${plan.support.height.value.likely} × ${plan.support.width.value.likely} cm`
      : '';
  return [
    plan.kind === 'record'
      ? 'A record of an existing painting'
      : plan.kind === 'palette'
        ? 'A palette'
        : 'A plan',
    plan.support?.material && !plan.support.material.unknown ? `on ${plan.support.material.name}${size}` : '',
    plan.start ? `from ${plan.start.iso}` : '',
    plan.made
      ? `made ${plan.made.from === plan.made.to ? plan.made.from : `${plan.made.from}–${plan.made.to}`}`
      : '',
  ]
    .filter(Boolean)
    .join(', ');
}

function pictures(study: Study, findings: readonly Finding[], extent: Extent): Part {
  const section = sectionDrawing(study, undefined, undefined, extent);
  const strips = buildUpStrips(study, hexOf, undefined, extent);
  const spectra = spectraDrawing(study, undefined, extent);
  const ladders = study.plan.kind === 'plan' ? fatnessLadders(study, findings, undefined, extent) : [];
  const depth = new Map<string, number>();
  for (const { areas } of study.layers) for (const a of areas) depth.set(a, (depth.get(a) ?? 0) + 1);
  const left = notDrawn(study.areas.length, largest([...depth.values()]), extent);
  const blocks: (Block | undefined)[] = [
    left === undefined ? undefined : words(left),
    section && {
      kind: 'drawing',
      name: 'section',
      alternative:
        'Section through the layers, drawn to scale; the table of layers says the same in figures.',
      drawing: section,
    },
    strips && {
      kind: 'drawing',
      name: 'build-up',
      alternative: 'Colour after each layer, area by area; the tables of colours say the same in figures.',
      drawing: strips,
    },
    ...ladders.map(
      (l, i): Block => ({
        kind: 'drawing',
        name: `fatness-${i + 1}`,
        alternative: `Fatness of the layers on ${l.areas.join(', ')}; the table of layers says the same in figures.`,
        drawing: l.drawing,
      }),
    ),
    spectra && {
      kind: 'drawing',
      name: 'spectra',
      alternative: 'Reflectance of the finished areas from 400 to 700 nm; its description gives figures.',
      drawing: spectra,
    },
  ];
  return { id: 'pictures', title: 'Pictures', blocks: blocks.filter((b) => b !== undefined) };
}

const MOST_PLACES = 3;

/** What a report of a plan with errors says at its top; undefined where there are none. */
export function noticeOf(findings: readonly Finding[], line: (f: Finding) => string): string | undefined {
  const errors = findings.filter((f) => f.severity === 'error');
  if (errors.length === 0) return undefined;
  const places = errors.slice(0, MOST_PLACES).map(line).filter(Boolean);
  const more = errors.length - places.length;
  const where = places.length > 0 ? ` (${places.join(', ')}${more > 0 ? `, and ${more} more` : ''})` : '';
  return errors.length === 1
    ? `There is an error in this text${where}: what rests on it is missing, or not as it will be.`
    : `There are ${errors.length} errors in this text${where}: what rests on them is missing, or not as it will be.`;
}

/** `line` says where a finding stands, for instance `12:3`; `extent` how much is drawn. */
export function buildReport(
  study: Study,
  findings: readonly Finding[],
  line: (f: Finding) => string,
  extent = WHOLE,
): Report {
  const { plan } = study;
  const all: (Part | undefined)[] = [
    plan.description || plan.notes.length > 0
      ? {
          id: 'about',
          title: 'About',
          blocks: [
            ...(plan.description ? [words(plan.description)] : []),
            ...plan.notes.map((n) => words(n)),
          ],
        }
      : undefined,
    parts.findingsPart(findings, line),
    pictures(study, findings, extent),
    parts.structurePart(study),
    plan.kind === 'record' ? undefined : parts.layersPart(study),
    plan.kind === 'record' ? undefined : parts.dryingPart(study),
    parts.coloursPart(study, extent),
    parts.calendarPart(study),
    parts.diaryPart(study),
    parts.quantitiesPart(study),
    parts.airPart(study),
    parts.permanencePart(study),
    parts.cautionsPart(study),
    parts.statedPart(study),
    parts.allowsPart(study),
    parts.assumptionsPart(study),
    parts.sourcesPart(study),
  ];
  return {
    title: plan.title ?? 'Untitled',
    subtitle: subtitle(study),
    notice: noticeOf(findings, line),
    parts: all.filter((p) => p !== undefined && p.blocks.length > 0) as Part[],
  };
}
