import type { Log } from 'sarif';
import type { CheckedFile, Range } from '../../report/checked.ts';
import { rules } from '../../rules/index.ts';
import { tool } from '../../study/tool.ts';
import { helpMarkdown, helpText } from '../explained.ts';

const LEVEL = { error: 'error', warning: 'warning', info: 'note', hint: 'note' } as const;

const region = ({ start, end }: Range) => ({
  startLine: start.line,
  startColumn: start.column,
  endLine: end.line,
  endColumn: end.column,
});

const uriOf = (path: string) => path.split('/').map(encodeURIComponent).join('/');

const location = (path: string, range: Range) => ({
  physicalLocation: { artifactLocation: { uri: uriOf(path) }, region: region(range) },
});

/** SARIF 2.1.0 (OASIS). Columns count UTF-16 code units, as the log says. */
export function sarifLog(files: readonly CheckedFile[]): Log {
  const index = new Map<string, number>(rules.map((r, i) => [r.id, i]));
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        columnKind: 'utf16CodeUnits',
        tool: {
          driver: {
            name: tool.name,
            version: tool.version,
            properties: { data: tool.data },
            rules: rules.map((r) => ({
              id: r.id,
              shortDescription: { text: r.title },
              fullDescription: { text: r.why },
              help: { text: helpText(r), markdown: helpMarkdown(r) },
              defaultConfiguration: { level: LEVEL[r.severity] },
            })),
          },
        },
        results: files.flatMap((file) =>
          file.findings.map((f) => ({
            ruleId: f.rule,
            ...(index.has(f.rule) ? { ruleIndex: index.get(f.rule) } : {}),
            level: LEVEL[f.severity],
            message: { text: f.message },
            locations: [location(file.path, f.range)],
            ...(f.related.length > 0
              ? {
                  relatedLocations: f.related.map((r) => ({
                    ...location(r.path, r.range),
                    message: { text: r.message },
                  })),
                }
              : {}),
            ...(f.fixes.length > 0
              ? {
                  fixes: f.fixes.map((fix) => ({
                    description: { text: fix.title },
                    artifactChanges: [
                      {
                        artifactLocation: { uri: uriOf(file.path) },
                        replacements: fix.edits.map((e) => ({
                          deletedRegion: region(e.range),
                          insertedContent: { text: e.text },
                        })),
                      },
                    ],
                  })),
                }
              : {}),
          })),
        ),
      },
    ],
  };
}
