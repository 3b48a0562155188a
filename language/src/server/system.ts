/** What an operating system refuses, in words that follow a colon. */
const WORDS: Readonly<Record<string, string>> = {
  EACCES: 'its permissions forbid it',
  EBUSY: 'another program holds it',
  EDQUOT: 'the disk is full',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'its name is too long',
  ENFILE: 'too many files are open',
  ENOENT: 'there is no such file or folder',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of its path is no folder',
  EPERM: 'its permissions forbid it',
  EROFS: 'the disk is read-only',
};

const codeOf = (error: unknown): string | undefined => {
  const code = (error as { readonly code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : undefined;
};

/** Whether it is one of those, and not a fault of ours. */
export const isRefusal = (error: unknown): boolean => Object.hasOwn(WORDS, codeOf(error) ?? '');

export function refusal(error: unknown): string {
  const code = codeOf(error) ?? String(error);
  return WORDS[code] ?? `the system says ${code}`;
}
