/** What the parts of access promise each other and the controllers. One file each implements one. */
import type { DeviceId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { KnownDevice, KnownPerson } from './identity.ts';

export interface AccountRecord {
  readonly account: string;
  readonly staff: StaffId;
  readonly name: string;
  readonly wide: boolean;
  readonly active: boolean;
  readonly edition: number;
  readonly state: 'invited' | 'ready' | 'outside' | 'none';
  readonly hasCode: boolean;
}

/** A one-time token in clear exists only in the answer that makes it; the database holds its hash. */
export interface Invitation {
  readonly account: string;
  readonly token: string;
  readonly ends: EpochMs;
}

/** accounts.ts: people who may come in. Nothing here knows of HTTP. */
export interface Accounts {
  /** True until somebody could sign in: then the first administrator is still to be made. */
  firstRun(): Promise<boolean>;
  list(): Promise<readonly AccountRecord[]>;
  byStaff(staff: StaffId): Promise<AccountRecord | null>;
  byId(account: string): Promise<AccountRecord | null>;
  /** @throws Answered staff-has-account */
  make(of: { staff: StaffId; name: string; wide: boolean }): Promise<AccountRecord>;
  /** Ends in 7 days (the first administrator's in 24 h); an earlier one of the account no longer works. */
  invite(account: string): Promise<Invitation>;
  readInvitation(
    token: string,
  ): Promise<{ kind: 'first-run' | 'account'; name: string | null; ends: EpochMs } | null>;
  /** @throws Answered invitation-over, sign-in-name-taken, password-too-common */
  accept(request: {
    token: string;
    name?: string | undefined;
    signInName: string;
    password: string;
    code?: string | undefined;
  }): Promise<AccountRecord>;
  /** Null when name and password do not belong together, or the account is not active: never says which. */
  check(signInName: string, password: string): Promise<AccountRecord | null>;
  /** The person of a chosen name or a badge, when the short code is theirs. Counts nothing itself. */
  checkCode(
    who: { staff?: StaffId | undefined; badge?: string | undefined },
    code: string,
  ): Promise<{ readonly staff: StaffId; readonly right: boolean } | null>;
  /** @throws Answered wrong-password, password-too-common */
  changeSecret(
    account: string,
    change: {
      password: string;
      newPassword?: string | undefined;
      newCode?: string | undefined;
      newBadge?: string | undefined;
    },
  ): Promise<void>;
  setActive(account: string, active: boolean): Promise<void>;
  /** Single sign-on: the account of an outside identity, made when it is new; its name kept up to date. */
  outside(of: { issuer: string; subject: string; name: string; wide: boolean }): Promise<AccountRecord>;
  /** Ends every session of these people: their role changed. */
  raiseEdition(staff: readonly StaffId[]): Promise<void>;
}

export interface SessionBegun {
  readonly token: string;
  readonly session: string;
  readonly ends: EpochMs;
}
/** sessions.ts */
export interface Sessions {
  begin(account: AccountRecord): Promise<SessionBegun>;
  /** The person of a token, seen now (kept at most once a minute); `ran-out` when it ended by time alone. */
  person(token: string): Promise<KnownPerson | { readonly ranOut: StaffId } | null>;
  end(session: string): Promise<void>;
  /** Called with ids of sessions that ended, so that their sockets go. */
  onEnd(listener: (sessions: readonly string[]) => void): () => void;
}

export interface DeviceLine extends KnownDevice {
  readonly place: string;
  readonly approved: EpochMs;
  readonly approvedBy: StaffId;
  readonly seen: EpochMs | null;
  readonly painted: number | null;
  readonly paintedAt: EpochMs | null;
  readonly page: string | null;
  readonly revoked: EpochMs | null;
}
/** devices.ts: pairing, keys, what each screen painted. */
export interface Devices {
  beginPairing(kind: 'wall' | 'shared'): Promise<{ code: string; poll: string; ends: EpochMs }>;
  /** The key comes out exactly once. */
  claim(
    poll: string,
  ): Promise<{ state: 'waiting' | 'over' } | { state: 'paired'; key: string; device: KnownDevice }>;
  /** @throws Answered no-such-pairing-code (wrong, over, or begun for the other kind) */
  approve(
    ward: WardId,
    by: StaffId,
    request: { code: string; kind: 'wall' | 'shared'; level: BoardLevel; place: string },
  ): Promise<DeviceLine>;
  /** The device of a key; null when there is none or it was revoked. */
  device(key: string): Promise<KnownDevice | null>;
  list(ward: WardId): Promise<readonly DeviceLine[]>;
  /** @throws Answered no-such-device */
  revoke(ward: WardId, device: DeviceId, by: StaffId): Promise<void>;
  onRevoke(listener: (device: DeviceId) => void): () => void;
  /** Batched: kept within some seconds. */
  saw(device: DeviceId, what?: { feed: number; page: string }): void;
  stop(): Promise<void>;
}

/** signing.ts: the short code on a shared device, and the two minutes it opens. */
export interface Signing {
  /** @throws Answered wrong-code (says how many tries are left), code-locked, not-on-this-ward */
  open(
    device: KnownDevice,
    who: { staff?: StaffId | undefined; badge?: string | undefined },
    code: string,
  ): Promise<{ token: string; staff: StaffId; until: EpochMs }>;
  person(token: string, device: KnownDevice): Promise<KnownPerson | null>;
  close(token: string): Promise<void>;
  /** A full sign-in or a new code frees the person again on every device. */
  unlock(staff: StaffId): Promise<void>;
}

export type Looked =
  | 'read-stay'
  | 'read-board-whole'
  | 'export-stay'
  | 'erase-stay'
  | 'break-glass'
  | 'review-glass'
  | 'read-access-log'
  | 'sign-in'
  | 'sign-in-refused'
  | 'device-approved'
  | 'device-revoked';
/** access-log.ts: append-only, batched; reading it is itself recorded. */
export interface AccessLog {
  note(one: {
    readonly ward: WardId | '';
    readonly what: Looked;
    readonly stay?: StayId | undefined;
    readonly staff?: StaffId | null | undefined;
    readonly device?: DeviceId | null | undefined;
    readonly words?: string | undefined;
  }): void;
  read(
    ward: WardId,
    asked: { stay?: StayId; before?: number; limit: number },
  ): Promise<
    readonly {
      number: number;
      at: EpochMs;
      stay: StayId | null;
      staff: StaffId | null;
      device: DeviceId | null;
      what: string;
      words: string | null;
    }[]
  >;
  /** Writes what waits; awaited by export, erasure and closing. */
  flush(): Promise<void>;
  stop(): Promise<void>;
}

export interface GlassRecord {
  readonly glass: string;
  readonly ward: WardId;
  readonly staff: StaffId;
  readonly reason: string;
  readonly words: string;
  readonly began: EpochMs;
  readonly ends: EpochMs;
  readonly reviewed: { readonly at: EpochMs; readonly by: StaffId; readonly words: string } | null;
}
/** glass.ts: reading a ward where one's role does not reach, for one hour, with a reason, reviewed later. */
export interface Glass {
  begin(ward: WardId, staff: StaffId, reason: string, words: string): Promise<GlassRecord>;
  /** Cached for seconds: asked at every request of somebody who is not on the ward. */
  open(ward: WardId, staff: StaffId): Promise<GlassRecord | null>;
  list(ward: WardId): Promise<readonly GlassRecord[]>;
  /** @throws Answered no-such-glass, own-glass (nobody reviews their own) */
  review(ward: WardId, glass: string, by: StaffId, words: string): Promise<void>;
}

/** single-sign-on.ts: OpenID Connect, authorisation code with PKCE, state and nonce. Null when not set up. */
export interface SingleSignOn {
  readonly label: string;
  /** Where to send the browser, and what to keep in a short-lived sealed cookie until it comes back. */
  begin(returnTo: string): Promise<{ url: string; kept: string }>;
  /** @throws Answered sign-on-failed */
  finish(
    currentUrl: URL,
    kept: string,
  ): Promise<{
    issuer: string;
    subject: string;
    name: string;
    wide: boolean;
    /** Roles by ward as the groups give them. */
    roles: ReadonlyMap<WardId, string>;
    returnTo: string;
  }>;
}
export const ACCOUNTS = Symbol('Accounts');
export const SESSIONS = Symbol('Sessions');
export const DEVICES = Symbol('Devices');
export const SIGNING = Symbol('Signing');
export const ACCESS_LOG = Symbol('AccessLog');
export const GLASS = Symbol('Glass');
export const SINGLE_SIGN_ON = Symbol('SingleSignOn');
export const GATE = Symbol('Gate');
