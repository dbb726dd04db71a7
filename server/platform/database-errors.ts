/** No connection could be had: nothing was sent. */
export class DatabaseUnreachable extends Error {
  constructor(cause: unknown) {
    super('the database cannot be reached', { cause });
    this.name = 'DatabaseUnreachable';
  }
}
/** The connection broke, or stayed silent too long, after a statement had been sent. */
export class AnswerLost extends Error {
  constructor(cause: unknown) {
    super('the connection broke before the database answered', { cause });
    this.name = 'AnswerLost';
  }
}
/** Another process holds the data folder. */
export class FolderInUse extends Error {
  constructor(folder: string) {
    super(`the data folder ${folder} is in use by another running Footboard: stop that one, or set DATA_DIR`);
    this.name = 'FolderInUse';
  }
}

/** What PostgreSQL said no with: the SQLSTATE and, for a broken constraint, its name. Never its words. */
export interface DatabaseRefusal {
  readonly code: string;
  readonly constraint: string | undefined;
}

export function refusalOf(error: unknown): DatabaseRefusal | null {
  if (typeof error !== 'object' || error === null) return null;
  const { code, constraint, severity } = error as Record<string, unknown>;
  // A socket error also has a `code` (ECONNRESET); only the server's answers have a severity.
  if (typeof code !== 'string' || typeof severity !== 'string') return null;
  return { code, constraint: typeof constraint === 'string' && constraint !== '' ? constraint : undefined };
}

/**
 * True when the server ended the session rather than answer the statement: SQLSTATE class 08
 * (connection exception), 57P01 admin shutdown, 57P02 crash shutdown, 57P05 idle session timeout
 * (PostgreSQL manual, appendix A). The commit may or may not have happened.
 */
export const endsSession = (code: string): boolean => code.startsWith('08') || /^57P0[125]$/.test(code);
