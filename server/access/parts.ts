import type { Clock } from '../platform/clock.ts';
import type { Config } from '../platform/config.ts';
import type { Database } from '../platform/database.ts';
import type { Logger } from '../platform/logging.ts';
import type { AccessKeys } from './keys.ts';

/** What the parts of access are made of. Times of sessions, codes and keys run on the machine's clock. */
export interface AccessParts {
  readonly database: Database;
  readonly keys: AccessKeys;
  /** Real time, never the demo's: a sign-in must not run out sixty times as fast. */
  readonly clock: Clock;
  readonly config: Config;
  readonly logger: Logger;
}
