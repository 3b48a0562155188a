/**
 * The notices that go with the packages: licences of the libraries inside the bundles, taken from what was bundled, and
 * of the measured data that the colour tables were derived from.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';

/** What is shipped of others' measurements, as their licences ask it to be said. */
function data(root: string): string {
  const { attributions } = JSON.parse(
    readFileSync(join(root, 'language/src/materials/tables/version.json'), 'utf8'),
  ) as { attributions: { what: string; licence: string; from: string }[] };
  const lines = attributions.map((a) => `- ${a.what}. ${a.from} (${a.licence}).`);
  return `## Measured data

The bundles hold a table of optical data (absorption and scattering) that we derived from others' measurements and changed on the way. The authors endorse nothing of it.

${lines.join('\n')}

CC0 1.0: https://creativecommons.org/publicdomain/zero/1.0/. CC BY 4.0: https://creativecommons.org/licenses/by/4.0/.

The CIE 1931 standard observer and the illuminants are figures published by the CIE (ISO/CIE 11664). Every other figure names its source in \`paintplan explain\`.
`;
}

export interface Shipped {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

/** The folder of the package that a bundled file belongs to; undefined for our own files. */
const folderOf = (input: string): string | undefined =>
  input.match(/^(.*\bnode_modules\/(?:@[^/]+\/)?[^/]+)\//)?.[1];

/** The packages a bundle holds, by name, each with its licence text. Throws where one comes without. */
export function shippedIn(metafiles: readonly Metafile[], root: string): Shipped[] {
  const inputs = metafiles.flatMap((m) =>
    Object.values(m.outputs).flatMap((o) =>
      Object.entries(o.inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
    ),
  );
  const folders = [...new Set(inputs.map(folderOf).filter((f) => f !== undefined))];
  const shipped = folders.map((folder): Shipped => {
    const at = join(root, folder);
    const { name, version, license } = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8'));
    const file = readdirSync(at).find((f) => /^licen[cs]e(\.|$)/i.test(f));
    if (!license || !file) throw new Error(`${name} comes without a licence: ship nothing of it`);
    return { name, version, licence: license, text: readFileSync(join(at, file), 'utf8').trim() };
  });
  return [...new Map(shipped.map((s) => [`${s.name} ${s.version}`, s])).values()].sort((a, b) =>
    a.name.localeCompare(b.name, 'en'),
  );
}

/** The notices as Markdown; equal licence texts are printed once. */
export function notices(metafiles: readonly Metafile[], root: string): string {
  const byText = new Map<string, Shipped[]>();
  for (const s of shippedIn(metafiles, root)) {
    const key = s.text.replace(/\s+/g, ' ');
    byText.set(key, [...(byText.get(key) ?? []), s]);
  }
  const libraries = [...byText.values()].map(
    (group) =>
      `### ${group.map((s) => `${s.name} ${s.version}`).join(', ')}\n\n${group[0]?.licence}\n\n\`\`\`text\n${group[0]?.text}\n\`\`\`\n`,
  );
  return `# Notices\n\nPaintplan itself is under the MIT licence. It holds the following of others.\n\n${data(root)}\n## Libraries\n\n${libraries.join('\n')}`;
}
