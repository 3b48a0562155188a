/** `use` where the server reads no disk: in a workspace that is not trusted, and in one that lies elsewhere. */
import { URI, Utils } from 'vscode-uri';
import { hasScheme, loneHost, type PlanHost } from '../plan/host.ts';
import { FILE_ENDING } from '../plan/names.ts';

type Read = ReturnType<PlanHost['read']>;

/** Reads nothing, and says why. */
export const untrustedHost: PlanHost = {
  resolve: loneHost.resolve,
  read: () => ({
    failed: 'unreadable',
    detail: 'the workspace is not trusted, and until it is no other file is read',
  }),
};

const below = (uri: string, root: string): boolean => uri.startsWith(root.endsWith('/') ? root : `${root}/`);

/**
 * A workspace whose files the editor keeps, not this machine's disk (a repository on a forge, the browser). `handed`
 * gives what the editor handed over of a file, if it did; open files are looked up before anything comes here.
 */
export function virtualHost(
  folders: readonly string[],
  handed: (uri: string) => Read | undefined = () => undefined,
): PlanHost {
  const roots = folders.map((f) => URI.parse(f).toString());
  return {
    resolve(path, from) {
      if (path.includes('\0') || hasScheme(path) || /^[\\/]/.test(path)) return { outside: true };
      const base = URI.parse(from);
      // a plan that was never saved lies in no folder
      if (base.scheme === 'untitled') return { uri: `untitled:${path}` };
      const uri = Utils.joinPath(Utils.dirname(base), path.replaceAll('\\', '/')).toString();
      const inside = roots.length === 0 || roots.some((root) => below(uri, root));
      return inside && path.endsWith(FILE_ENDING) ? { uri } : { outside: true };
    },
    read(uri) {
      if (uri.startsWith('untitled:'))
        return { failed: 'unreadable', detail: 'save this plan first: a path begins in its folder' };
      return (
        handed(uri) ?? {
          failed: 'unreadable',
          detail: 'in this workspace only open files are read: open it in the editor',
        }
      );
    },
  };
}

export interface Fetcher {
  readonly handed: (uri: string) => Read | undefined;
  /** what was handed over may have changed */
  forget(uri: string): void;
}

const FAILURES = ['missing', 'unreadable', 'too-large'] as const;

function asRead(given: unknown): Read {
  const { text, failed, detail } = (typeof given === 'object' && given !== null ? given : {}) as Record<
    string,
    unknown
  >;
  if (typeof text === 'string') return { text };
  return {
    failed: FAILURES.find((f) => f === failed) ?? 'unreadable',
    ...(typeof detail === 'string' ? { detail } : {}),
  };
}

/** Asks the editor for each file once, whose answer may be anything, and says when an answer has come. Plans are read again then. */
export function fetcher(ask: (uri: string) => Promise<unknown>, arrived: () => void): Fetcher {
  const known = new Map<string, Read>();
  return {
    handed(uri) {
      const read = known.get(uri);
      if (read) return read;
      const waiting: Read = { failed: 'unreadable', detail: 'the editor is being asked for it' };
      known.set(uri, waiting);
      const settle = (answer: Read) => {
        // forgotten, or asked for anew, in the meantime
        if (known.get(uri) !== waiting) return;
        known.set(uri, answer);
        arrived();
      };
      ask(uri).then(
        (given) => settle(asRead(given)),
        () => settle({ failed: 'unreadable', detail: 'the editor could not read it' }),
      );
      return waiting;
    },
    forget(uri) {
      known.delete(uri);
    },
  };
}
