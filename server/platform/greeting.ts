/** The lines a start prints: which addresses to open, and what to know about this storage and network. */
import type { AddressInfo } from 'node:net';
import { networkInterfaces } from 'node:os';
import type { Boards } from '../projecting/board.ts';
import type { Config } from './config.ts';
import type { Database } from './database.ts';

const EVERYWHERE = new Set(['0.0.0.0', '::']);
const HERE = new Set(['127.0.0.1', 'localhost', '::1']);

/** The address a person opens; for "every network" the first that other machines can reach. */
export function urlOf(
  address: AddressInfo | string | null,
  { host, tls }: Pick<Config, 'host' | 'tls'>,
): string {
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const name = EVERYWHERE.has(host)
    ? (reachable() ?? 'localhost')
    : host === '127.0.0.1'
      ? 'localhost'
      : host;
  const shown = name.includes(':') ? `[${name}]` : name;
  return `${tls ? 'https' : 'http'}://${shown}:${port}`;
}

const reachable = (): string | undefined =>
  Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .find((address) => address.family === 'IPv4' && !address.internal)?.address;

export interface GreetingParts {
  readonly url: string;
  readonly config: Config;
  readonly boards: Pick<Boards, 'wards' | 'snapshot'>;
  readonly demo: boolean;
  readonly kind: Database['kind'];
  /** Sign-in is off: anyone may say who they are. */
  readonly open: boolean;
  /** Makes the first administrator; null once there is one. */
  readonly firstRunLink: string | null;
}

export function greeting({ url, config, boards, demo, kind, open, firstRunLink }: GreetingParts): string {
  const lines = [demo ? 'Footboard is running with an invented ward (DEMO).' : 'Footboard is running.'];
  if (firstRunLink !== null) {
    lines.push(
      'Nobody can sign in yet. Whoever opens this link becomes the first administrator; it works once, for 24 hours, and the next start makes a new one:',
      `  ${firstRunLink}`,
    );
  }
  const wards = boards.wards();
  if (wards.length === 0) lines.push(`  Set up your ward   ${url}/set-up`);
  for (const ward of wards) {
    lines.push(
      `  ${boards.snapshot(ward)?.board.name ?? ward}`,
      `    wall       ${url}/wards/${ward}/wall`,
      `    bedside    ${url}/wards/${ward}/bedside`,
      `    huddle     ${url}/wards/${ward}/huddle`,
    );
  }
  if (wards.length > 0) lines.push(`  Set up a ward      ${url}/set-up`);
  if (kind === 'pglite') {
    lines.push(
      `Storage: embedded database in ${config.dataDir}, for trial; a power cut may lose the last seconds. For a ward in service set DATABASE_URL.`,
    );
  }
  if (!config.tls) {
    lines.push(
      'Plain HTTP: beyond this machine, entry without a connection and the camera are off; set TLS_CERT_FILE and TLS_KEY_FILE for HTTPS.',
    );
  }
  if (open && !HERE.has(config.host)) {
    lines.push('Sign-in is off: whoever reaches this address can read all of it and write.');
  }
  if (config.redisUrl) lines.push('REDIS_URL is set; this version does not use it yet.');
  return `${lines.join('\n')}\n`;
}
