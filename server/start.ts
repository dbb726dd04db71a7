/** Opens everything in order and closes it in the reverse order. Used by main.ts, the demo and the tests. */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { createSecureContext } from 'node:tls';
import { DECIDERS } from './capabilities/deciders.ts';
import { openSimulator } from './capabilities/forecast/simulator.ts';
import { openPlanner } from './capabilities/planning/open-planner.ts';
import { printHourly } from './capabilities/paper/hourly.ts';
import { openConcerns } from './capabilities/concerns/concerns.ts';
import { RoundLists } from './capabilities/dayplan/round-lists.ts';
import { openPaper } from './capabilities/paper/sheets.ts';
import { accessKeys } from './access/keys.ts';
import { joinPath } from './access/invitations.ts';
import { openAccess } from './access/open-access.ts';
import type { Access } from './access/open-access.ts';
import { endsSessions } from './access/role-changes.ts';
import { Commands } from './commanding/handle-command.ts';
import { Streams } from './commanding/streams.ts';
import { noLimits, openLimits } from './http/limits.ts';
import type { Log } from './log/log.ts';
import { openLog } from './log/open-log.ts';
import type { Clock } from './platform/clock.ts';
import { systemClock } from './platform/clock.ts';
import type { Config } from './platform/config.ts';
import type { Database } from './platform/database.ts';
import { openDatabase } from './platform/database.ts';
import { greeting, urlOf } from './platform/greeting.ts';
import { openLogger } from './platform/logging.ts';
import type { LogTo, Logger } from './platform/logging.ts';
import { migrate } from './platform/migrate.ts';
import { StartRefused } from './platform/start-refused.ts';
import { openWorkerPool } from './platform/worker-pool.ts';
import { openBoards } from './projecting/open-boards.ts';
import type { RunningBoards } from './projecting/open-boards.ts';
import { openProjectionStore } from './projecting/projection-store.ts';
import { asStartRefused } from './start-failures.ts';
import { checkMasterKey, masterKeyFrom } from './vault/master-key.ts';
import { openVault } from './vault/open-vault.ts';
import type { Vault } from './vault/vault.ts';

export interface StartOptions {
  readonly config: Config;
  readonly clock?: Clock;
  /** Invented data: every screen is marked. */
  readonly demo?: boolean;
  /**
   * `open` turns sign-in off: whoever comes is who they say. For the demo and for tests; there is no
   * setting for it.
   */
  readonly access?: 'accounts' | 'open';
  /** Counts no requests: for tests that send more than a ward would. There is no setting for it. */
  readonly limits?: 'off';
  /** Times of sessions, codes and links; a test moves it. */
  readonly accessClock?: Clock;
  /** Prints nothing but warnings and errors. */
  readonly quiet?: boolean;
  /** Takes the server's log lines in place of standard error: for tests that look for what must not be there. */
  readonly logTo?: LogTo;
  /** Runs on the migrated database before any board is folded. */
  readonly beforeBoards?: (opened: { readonly log: Log; readonly database: Database }) => Promise<void>;
}

export interface Footboard {
  /** Where it listens, without a slash at the end. */
  readonly url: string;
  /** Makes the first administrator, once; null when there is one, and with sign-in off. */
  readonly firstRunLink: string | null;
  readonly commands: Commands;
  readonly boards: RunningBoards;
  readonly log: Log;
  readonly vault: Vault;
  readonly access: Access;
  readonly database: Database;
  /** Ends every connection, then the projection, then the database. Twice does no harm. */
  close(): Promise<void>;
}

/** @throws StartRefused with one line for whoever started it; then nothing is left open. */
export async function startFootboard(options: StartOptions): Promise<Footboard> {
  const { config, clock = systemClock, demo = false, quiet = false } = options;
  const logger = openLogger(quiet && config.logLevel === 'info' ? 'warn' : config.logLevel, options.logTo);
  const opened: (() => Promise<unknown>)[] = [];
  const closeAll = async () => {
    for (const close of opened.splice(0).toReversed()) await close();
  };
  try {
    checkTls(config);
    await checkPort(config);
    // The database takes longest to open; the web framework loads meanwhile.
    const loading = import('./app.ts');
    const database = await openDatabase(config);
    opened.push(() => database.close());
    await migrate(database);
    const masterKey = masterKeyFrom(config.dataDir, config.masterKeyFile);
    await checkMasterKey(database, masterKey);
    const vault = openVault(database, masterKey);
    const log = openLog(database, vault);
    await options.beforeBoards?.({ log, database });

    const boards = openBoards({ log, database, clock, demo, report: reportTo(logger) });
    opened.push(() => boards.stop());
    const [{ createApp }] = await Promise.all([loading, boards.start()]);
    const streams = new Streams(log);
    // A sign-in runs out by real time, also where the ward's clock is played.
    const access = await openAccess(
      { database, keys: accessKeys(masterKey), clock: options.accessClock ?? systemClock, config, logger },
      options.access ?? 'accounts',
    );
    opened.push(() => access.stop());
    const commands = new Commands({
      log,
      streams,
      boards,
      clock,
      authors: access.authors,
      deciders: DECIDERS,
      logger,
      onAccepted: endsSessions(access.accounts),
    });
    const pool = openWorkerPool();
    opened.push(() => pool.close());
    const { publicUrl = null, paperDir } = config;
    const paper = openPaper({ database, boards, log, streams, vault, clock, demo, publicUrl });
    const concerns = openConcerns({ database, keys: accessKeys(masterKey), clock });
    const roundLists = new RoundLists({ database, log, wardThen: boards.wardThen });
    opened.push(
      roundLists.follow(boards, (ward, error) =>
        logger.error({ err: error }, `the round's lists of ward ${ward} were not kept`),
      ),
    );
    const app = await createApp(
      {
        log,
        vault,
        boards,
        clock,
        streams,
        commands,
        totals: openProjectionStore(database),
        roundLists,
        paper,
        concerns,
        simulate: openSimulator(pool),
        planner: openPlanner(pool),
        access,
        limits: options.limits === 'off' ? noLimits : openLimits(),
        about: { demo, publicUrl, trialStorage: database.kind === 'pglite', open: access.mode === 'open' },
      },
      config,
      logger,
    );
    opened.push(() => app.close());
    await app.listen(config.port, config.host);
    const url = urlOf(app.getHttpServer().address(), config);
    if (paperDir !== undefined) {
      const failed = (ward: string, error: unknown) =>
        logger.error({ err: error }, `the paper sheet of ward ${ward} was not written`);
      const wards = () => boards.wards();
      opened.push(printHourly({ paper, wards, folder: paperDir, origin: url, failed }));
    }
    const open = access.mode === 'open';
    const first = open ? null : await access.accounts.inviteFirst();
    const firstRunLink = first && `${url}${joinPath(first)}`;
    if (!quiet) {
      process.stdout.write(greeting({ url, config, boards, demo, kind: database.kind, open, firstRunLink }));
    }
    return { url, firstRunLink, commands, boards, log, vault, access, database, close: closeAll };
  } catch (error) {
    await closeAll().catch((again: unknown) => logger.error({ err: again }, 'closing after a failed start'));
    throw asStartRefused(error, config);
  }
}

const reportTo = (logger: Logger) => (place: string, error: unknown) => logger.error({ err: error }, place);

function checkTls({ tls }: Config): void {
  if (!tls) return;
  try {
    createSecureContext({ cert: readFileSync(tls.certFile), key: readFileSync(tls.keyFile) });
  } catch (error) {
    throw new StartRefused(
      `TLS_CERT_FILE and TLS_KEY_FILE do not make a pair that can be used (${(error as Error).message}): write a PEM certificate and the PEM key made for it`,
      { cause: error },
    );
  }
}

/** Whoever started a second server by mistake hears it at once, not after the database has opened. */
async function checkPort({ port, host }: Config): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(port, host, () => probe.close(() => resolve()));
  });
}
