import type { Config } from './platform/config.ts';
import { DatabaseUnreachable, FolderInUse } from './platform/database-errors.ts';
import { NewerDatabase } from './platform/migrate.ts';
import { StartRefused } from './platform/start-refused.ts';
import { BadMasterKey } from './vault/master-key.ts';

/** Says an expected failure of a start in one line with its remedy; anything else stays as it is. */
export function asStartRefused(error: unknown, config: Config): unknown {
  const line = lineFor(error, config);
  return line === null ? error : new StartRefused(line, { cause: error });
}

function lineFor(error: unknown, { port, host, databaseUrl }: Config): string | null {
  if (error instanceof FolderInUse || error instanceof NewerDatabase || error instanceof BadMasterKey) {
    return error.message;
  }
  if (error instanceof DatabaseUnreachable) {
    const why = error.cause instanceof Error ? error.cause.message || codeOf(error.cause) : '';
    return databaseUrl
      ? `DATABASE_URL cannot be reached (${why}): start that PostgreSQL, or put the address right`
      : `the embedded database cannot be opened (${why}): check that DATA_DIR can be written`;
  }
  switch (codeOf(error)) {
    case 'EADDRINUSE':
      return `PORT ${port} on ${host} is already in use: stop the program that has it, or write another port, for example PORT=${port + 1}`;
    case 'EACCES':
      return syscallOf(error) === 'listen'
        ? `PORT ${port} needs rights this user does not have: write a port from 1024 up, for example PORT=4000`
        : `DATA_DIR cannot be written (${(error as Error).message}): give this user the right, or write another folder`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `HOST is "${host}", which is no address of this machine: write 127.0.0.1, 0.0.0.0 or one of its own`;
    case 'ENOTDIR':
    case 'EEXIST':
    case 'EROFS':
    case 'ENOSPC':
      return `DATA_DIR cannot be used (${(error as Error).message}): write the path of a folder that can be written`;
    default:
      return null;
  }
}

const codeOf = (error: unknown): string => String((error as { code?: unknown } | null)?.code ?? '');
const syscallOf = (error: unknown): string => String((error as { syscall?: unknown } | null)?.syscall ?? '');
