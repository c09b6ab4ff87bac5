// What went wrong on the machine, as a sentence for whoever started the program: the system's own words help nobody.

const SENTENCES: Readonly<Record<string, string>> = {
  EACCES: 'cannot be read or written by this user. Give it the right to, or name another place',
  EPERM: 'cannot be read or written by this user. Give it the right to, or name another place',
  EROFS: 'lies on a file system that cannot be written. Name another place',
  EEXIST: 'is a file, where a folder is needed. Name another place',
  ENOTDIR: 'is a file, where a folder is needed. Name another place',
  ENOENT: 'is not there, and cannot be made there. Name another place',
  EISDIR: 'is a folder, where a file is needed. Name the file',
  ENOSPC: 'has no room left. Free some space, then start again',
  EADDRINUSE: 'is in use. Stop what uses it, or set LEMEL_PORT to another',
  EADDRNOTAVAIL: 'is no address of this machine. Set LEMEL_ADDRESS to one that it has',
};

/** An error as a sentence; one of the program's own goes on as it is. */
export function sentenceOf(error: unknown): string {
  const { code, path, address, port, message } = error as NodeJS.ErrnoException & { address?: string; port?: number };
  const known = code !== undefined && Object.hasOwn(SENTENCES, code) ? SENTENCES[code] : undefined;
  if (known === undefined) return message;
  const what = code === 'EADDRINUSE' ? `Port ${port}` : code === 'EADDRNOTAVAIL' ? `${address}` : (path ?? 'The data directory');
  return `${what} ${known}.`;
}
