/** How the plan room reaches other files, without knowing a file system. */
export interface PlanHost {
  /** Resolves a `use` path relative to a file. */
  resolve(path: string, from: string): { readonly uri: string } | { readonly outside: true };
  /** Text of a file, or why there is none. */
  read(
    uri: string,
  ):
    | { readonly text: string }
    | { readonly failed: 'missing' | 'unreadable' | 'too-large'; readonly detail?: string };
}

/** An address or a drive (`https:`, `file:`, `C:`), not a path. */
export const hasScheme = (path: string): boolean => /^[a-z][a-z\d+.-]*:/i.test(path);

/** A host that knows no other file: every `use` is missing. */
export const loneHost: PlanHost = {
  resolve: (path) => ({ uri: path }),
  read: () => ({ failed: 'missing' }),
};
