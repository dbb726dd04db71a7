/** Everything that decides who may come in, opened together and closed together. */
import { accountsPolicy, openPolicy } from '../capabilities/people/author-policy.ts';
import type { AuthorPolicy } from '../capabilities/people/author-policy.ts';
import { openAccessLog } from './access-log.ts';
import { openAccounts } from './accounts.ts';
import { cookiesFor } from './cookies.ts';
import type { Cookies } from './cookies.ts';
import { openDevices } from './devices.ts';
import { Gate } from './gate.ts';
import { openGlass } from './glass.ts';
import { identifyBy, identifyOpenly } from './identify.ts';
import type { Identify } from './identify.ts';
import type { AccessParts } from './parts.ts';
import type {
  AccessLog,
  Accounts,
  Devices,
  Glass,
  Retention,
  Sessions,
  SingleSignOn,
  Signing,
} from './ports.ts';
import { openRetention } from './retention.ts';
import { openSessions } from './sessions.ts';
import { openSigning } from './signing.ts';
import { openSingleSignOn } from './single-sign-on.ts';

export interface Access {
  readonly mode: 'accounts' | 'open';
  readonly accounts: Accounts;
  readonly sessions: Sessions;
  readonly devices: Devices;
  readonly signing: Signing;
  readonly accessLog: AccessLog;
  readonly glass: Glass;
  readonly retention: Retention;
  readonly singleSignOn: SingleSignOn | null;
  readonly gate: Gate;
  readonly identify: Identify;
  readonly authors: AuthorPolicy;
  readonly cookies: Cookies;
  stop(): Promise<void>;
}

/** @param mode `open` turns sign-in off: for the demo and for tests, never from a setting. */
export async function openAccess(parts: AccessParts, mode: 'accounts' | 'open'): Promise<Access> {
  const accounts = openAccounts(parts);
  const sessions = openSessions(parts, accounts);
  const devices = openDevices(parts);
  const signing = openSigning(parts, accounts);
  const accessLog = openAccessLog(parts);
  const glass = openGlass(parts);
  const singleSignOn = await openSingleSignOn(parts);
  const gate = new Gate(glass);
  const cookies = cookiesFor(parts.config.tls !== undefined || parts.config.behindTlsProxy);
  return {
    mode,
    accounts,
    sessions,
    devices,
    signing,
    accessLog,
    glass,
    retention: openRetention(parts),
    singleSignOn,
    gate,
    cookies,
    identify: mode === 'open' ? identifyOpenly : identifyBy(cookies, { sessions, devices, signing }),
    authors: mode === 'open' ? openPolicy : accountsPolicy(gate),
    async stop() {
      await devices.stop();
      await accessLog.stop();
    },
  };
}
