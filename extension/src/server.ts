/**
 * One bundle for two ends: started as a process it is the language server; loaded by the extension it draws plans for
 * the Markdown preview. Two bundles would hold the same code twice.
 */
import { createAnalyser } from '../../language/src/analyse.ts';
import { hexOf } from '../../language/src/optics/css.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import { buildUpStrips } from '../../language/src/report/strips.ts';

declare const require: { readonly main: unknown };
declare const module: unknown;

let drawn = 0;

/** SVG of a plan's section and build-up, or '' where it has no layers to draw. Never throws. */
export function drawings(text: string): string {
  try {
    const { study } = createAnalyser()(text, 'file:///note.paintplan');
    const id = `paintplan-${++drawn}`;
    return [sectionDrawing(study, `${id}-section`), buildUpStrips(study, hexOf, `${id}-strips`)]
      .map((d) => d?.markup ?? '')
      .join('');
  } catch {
    return '';
  }
}

if (require.main === module) void import('../../language/src/server/node.ts');
