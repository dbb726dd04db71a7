/**
 * Settings come from the environment and nowhere else. A setting that cannot be right stops the
 * start with one line that names the variable, what is wrong, and what to write.
 */
import { existsSync } from 'node:fs';
import { z } from 'zod';
import { httpsOrHere, isHere, readSingleSignOn, singleSignOnSettings } from './config-sign-on.ts';
import type { SingleSignOnSettings } from './config-sign-on.ts';
import { StartRefused } from './start-refused.ts';

const LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

const readable = (path: string) => existsSync(path);
const hasScheme = (...schemes: readonly string[]) => {
  return (text: string) => URL.canParse(text) && schemes.includes(new URL(text).protocol);
};

/**
 * How long a sign-in lasts. NIST SP 800-63B (revision 3, assurance level 2, from memory): again after
 * 30 minutes without use and after 12 hours in any case. Owner: whoever runs the server; a longer
 * time is theirs to answer for.
 */
const SESSION_IDLE = '30';
const SESSION_HOURS = '12';

const wholeNumber = (otherwise: string, least: number, most: number, remedy: string) =>
  z
    .string()
    .default(otherwise)
    .refine((text) => /^\d{1,4}$/.test(text) && Number(text) >= least && Number(text) <= most, remedy)
    .transform(Number);

const environment = z.object({
  PORT: z
    .string()
    .default('4000')
    .refine(
      (text) => /^\d{1,5}$/.test(text) && Number(text) <= 65_535,
      'write a port number from 0 to 65535, for example PORT=4000',
    )
    .transform(Number),
  HOST: z
    .string()
    .default('127.0.0.1')
    .refine(
      (text) => /^[A-Za-z0-9.:_-]+$/.test(text),
      'write the address to listen on, for example HOST=127.0.0.1, or HOST=0.0.0.0 for every network of this machine',
    ),
  DATA_DIR: z.string().default('./data'),
  DATABASE_URL: z
    .string()
    .refine(
      hasScheme('postgres:', 'postgresql:'),
      'write a PostgreSQL address like postgres://user@db.ward.example:5432/footboard, or leave it out for the embedded database',
    )
    .optional(),
  REDIS_URL: z
    .string()
    .refine(
      hasScheme('redis:', 'rediss:'),
      'write an address like redis://db.ward.example:6379, or leave it out',
    )
    .optional(),
  TLS_CERT_FILE: z
    .string()
    .refine(readable, 'no such file: write the path of the certificate in PEM form')
    .optional(),
  TLS_KEY_FILE: z.string().refine(readable, 'no such file: write the path of the key in PEM form').optional(),
  MASTER_KEY_FILE: z
    .string()
    .refine(
      readable,
      'no such file: write the path of the master key, or leave it out to keep one in DATA_DIR',
    )
    .optional(),
  BEHIND_TLS_PROXY: z
    .enum(['1'], { error: 'write 1 when a proxy in front ends TLS, or leave it out' })
    .optional(),
  ALLOW_PLAIN_HTTP: z
    .enum(['1'], { error: 'write 1 to run without TLS on a network you answer for, or leave it out' })
    .optional(),
  KEEP_DAYS: z
    .string()
    .refine(
      (text) => /^[1-9]\d{0,4}$/.test(text),
      'write for how many days names and texts are kept after a stay has ended, for example KEEP_DAYS=3650, or leave it out',
    )
    .transform(Number)
    .optional(),
  /** Where a paper sheet of every ward is written each hour; left out, none is. */
  PAPER_DIR: z.string().optional(),
  NODE_ENV: z.string().optional(),
  /** What people type to get here; single sign-on sends the browser back to it. */
  PUBLIC_URL: z
    .string()
    .refine(
      (text) => httpsOrHere(text) && new URL(text).origin === text.replace(/\/$/, ''),
      'write the address people open, without a path, like https://board.ward.example',
    )
    .transform((text) => new URL(text).origin)
    .optional(),
  ...singleSignOnSettings,
  SESSION_IDLE_MINUTES: wholeNumber(
    SESSION_IDLE,
    1,
    60,
    'write after how many minutes without use a sign-in ends, 1 to 60, for example SESSION_IDLE_MINUTES=30',
  ),
  SESSION_HOURS: wholeNumber(
    SESSION_HOURS,
    1,
    24,
    'write after how many hours a sign-in ends in any case, 1 to 24, for example SESSION_HOURS=12',
  ),
  FOOTBOARD_LOG: z
    .enum(LEVELS, { error: `write one of ${LEVELS.join(', ')}, for example FOOTBOARD_LOG=info` })
    .default('info'),
});

export interface Config {
  readonly port: number;
  readonly host: string;
  readonly dataDir: string;
  readonly databaseUrl?: string;
  /** Accepted for later; nothing uses it yet. */
  readonly redisUrl?: string;
  readonly tls?: { readonly certFile: string; readonly keyFile: string };
  /** A proxy in front ends TLS: cookies are Secure, forwarded addresses are believed. */
  readonly behindTlsProxy: boolean;
  readonly allowPlainHttp: boolean;
  readonly masterKeyFile?: string;
  /** A sign-in ends after so long without use, and after so long in any case. */
  readonly sessionIdleMs: number;
  readonly sessionMs: number;
  readonly singleSignOn?: SingleSignOnSettings;
  /** Days after the end of a stay; what is older is listed for erasure, never erased by itself. */
  readonly keepDays?: number;
  /** What people type to get here: stands in the codes of a paper sheet. */
  readonly publicUrl?: string;
  /** Folder for the hourly paper sheets. */
  readonly paperDir?: string;
  readonly logLevel: (typeof LEVELS)[number];
}

/**
 * Reads the settings. An empty variable counts as not set, so that `PORT= npm start` is harmless.
 *
 * @throws StartRefused with one line that names every setting that is wrong
 */
export function readConfig(env: Readonly<Record<string, string | undefined>>): Config {
  const given = Object.fromEntries(Object.entries(env).filter(([, value]) => value !== ''));
  const parsed = environment.safeParse(given);
  if (!parsed.success) {
    throw new StartRefused(
      parsed.error.issues
        .map((issue) => {
          const name = String(issue.path[0]);
          return `${name} is ${shown(name, given[name])}: ${issue.message}`;
        })
        .join('; '),
    );
  }
  const e = parsed.data;
  if ((e.TLS_CERT_FILE === undefined) !== (e.TLS_KEY_FILE === undefined)) {
    const [set, missing] = e.TLS_CERT_FILE
      ? ['TLS_CERT_FILE', 'TLS_KEY_FILE']
      : ['TLS_KEY_FILE', 'TLS_CERT_FILE'];
    throw new StartRefused(
      `${missing} is not set while ${set} is: write both for HTTPS, or neither for plain HTTP`,
    );
  }
  // Whoever is on the network between could read names, codes and sessions.
  const plain = e.TLS_CERT_FILE === undefined && !e.BEHIND_TLS_PROXY && !e.ALLOW_PLAIN_HTTP;
  if (plain && (!isHere(e.HOST) || e.NODE_ENV === 'production')) {
    const why = isHere(e.HOST) ? 'NODE_ENV is "production"' : `HOST is "${e.HOST}"`;
    throw new StartRefused(
      `${why}, and nothing here ends TLS: set TLS_CERT_FILE and TLS_KEY_FILE, or BEHIND_TLS_PROXY=1 when a proxy in front ends it, or ALLOW_PLAIN_HTTP=1 on a network you answer for`,
    );
  }
  const singleSignOn = readSingleSignOn(e);
  return {
    port: e.PORT,
    host: e.HOST,
    dataDir: e.DATA_DIR,
    behindTlsProxy: e.BEHIND_TLS_PROXY === '1',
    allowPlainHttp: e.ALLOW_PLAIN_HTTP === '1',
    sessionIdleMs: e.SESSION_IDLE_MINUTES * 60_000,
    sessionMs: e.SESSION_HOURS * 3_600_000,
    logLevel: e.FOOTBOARD_LOG,
    ...(e.DATABASE_URL === undefined ? {} : { databaseUrl: e.DATABASE_URL }),
    ...(e.REDIS_URL === undefined ? {} : { redisUrl: e.REDIS_URL }),
    ...(e.TLS_CERT_FILE === undefined || e.TLS_KEY_FILE === undefined
      ? {}
      : { tls: { certFile: e.TLS_CERT_FILE, keyFile: e.TLS_KEY_FILE } }),
    ...(e.PUBLIC_URL === undefined ? {} : { publicUrl: e.PUBLIC_URL }),
    ...(e.PAPER_DIR === undefined ? {} : { paperDir: e.PAPER_DIR }),
    ...(e.KEEP_DAYS === undefined ? {} : { keepDays: e.KEEP_DAYS }),
    ...(e.MASTER_KEY_FILE === undefined ? {} : { masterKeyFile: e.MASTER_KEY_FILE }),
    ...(singleSignOn === null ? {} : { singleSignOn }),
  };
}

/** An address may hold a password, so none is printed. */
const shown = (name: string, value: string | undefined): string =>
  value === undefined ? 'not set' : /_(URL|ISSUER)$/.test(name) ? 'not usable' : `"${value}"`;
