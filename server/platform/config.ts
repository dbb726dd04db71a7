/**
 * Settings come from the environment and nowhere else. A setting that cannot be right stops the
 * start with one line that names the variable, what is wrong, and what to write.
 */
import { existsSync } from 'node:fs';
import { z } from 'zod';
import { StartRefused } from './start-refused.ts';

const LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

const readable = (path: string) => existsSync(path);
const hasScheme = (...schemes: readonly string[]) => {
  return (text: string) => URL.canParse(text) && schemes.includes(new URL(text).protocol);
};

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
  return {
    port: e.PORT,
    host: e.HOST,
    dataDir: e.DATA_DIR,
    behindTlsProxy: e.BEHIND_TLS_PROXY === '1',
    allowPlainHttp: e.ALLOW_PLAIN_HTTP === '1',
    logLevel: e.FOOTBOARD_LOG,
    ...(e.DATABASE_URL === undefined ? {} : { databaseUrl: e.DATABASE_URL }),
    ...(e.REDIS_URL === undefined ? {} : { redisUrl: e.REDIS_URL }),
    ...(e.TLS_CERT_FILE === undefined || e.TLS_KEY_FILE === undefined
      ? {}
      : { tls: { certFile: e.TLS_CERT_FILE, keyFile: e.TLS_KEY_FILE } }),
    ...(e.MASTER_KEY_FILE === undefined ? {} : { masterKeyFile: e.MASTER_KEY_FILE }),
  };
}

/** Database and Redis addresses may hold a password, so they are never printed. */
const shown = (name: string, value: string | undefined): string =>
  value === undefined ? 'not set' : name.endsWith('_URL') ? 'not usable' : `"${value}"`;
