/** What the parts of access promise each other and the controllers. One file each implements one. */
import type { Role } from '@footboard/shared/kernel/author';
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
  /** While it is first run: the link of the first administrator, anew; an earlier one dies. Else null. */
  inviteFirst(): Promise<Invitation | null>;
  list(): Promise<readonly AccountRecord[]>;
  byStaff(staff: StaffId): Promise<AccountRecord | null>;
  byId(account: string): Promise<AccountRecord | null>;
  /** @throws Answered staff-has-account */
  make(of: { staff: StaffId; name: string; wide: boolean }): Promise<AccountRecord>;
  /**
   * Ends in 7 days (the first administrator's in 24 h); an earlier one of the account no longer works.
   * @throws Answered no-such-account (also when it is switched off)
   */
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
    /** What anybody would try here (names of wards): no part of a password. */
    avoid?: readonly string[] | undefined;
  }): Promise<AccountRecord>;
  /** Null when name and password do not belong together, or the account is not active: never says which. */
  check(signInName: string, password: string): Promise<AccountRecord | null>;
  /** The person of a chosen name or a badge, when the short code is theirs. Counts nothing itself. */
  checkCode(
    who: { staff?: StaffId | undefined; badge?: string | undefined },
    code: string,
  ): Promise<{ readonly staff: StaffId; readonly right: boolean } | null>;
  /**
   * A new password ends every session of the account.
   * @throws Answered wrong-password, password-too-common, badge-taken
   */
  changeSecret(
    account: string,
    change: {
      /** Null for an account of single sign-on alone, when its caller has seen a sign-on just now. */
      password: string | null;
      newPassword?: string | undefined;
      newCode?: string | undefined;
      newBadge?: string | undefined;
      avoid?: readonly string[] | undefined;
    },
  ): Promise<void>;
  /** @throws Answered no-such-account, last-administrator */
  setActive(account: string, active: boolean): Promise<void>;
  /** Single sign-on: the account of an outside identity, made when it is new; its name kept up to date. */
  outside(of: { issuer: string; subject: string; name: string; wide: boolean }): Promise<AccountRecord>;
  /** Takes the account away for good, with its sessions, code, badge and openings' right. None: nothing happens. */
  remove(staff: StaffId): Promise<void>;
  /** Ends every session of these people: their role changed. */
  raiseEdition(staff: readonly StaffId[]): Promise<void>;
  /** Called with accounts whose sessions just ended by a change of edition. */
  onEdition(listener: (accounts: readonly string[]) => void): () => void;
}

export interface SessionBegun {
  readonly token: string;
  readonly session: string;
  readonly ends: EpochMs;
}
/** sessions.ts */
export interface Sessions {
  /** @throws Answered not-allowed when the account is switched off. */
  begin(account: AccountRecord): Promise<SessionBegun>;
  /**
   * The person of a token, seen now (kept at most once a minute); `ran-out` when it ended by time alone.
   * @param seen `quietly` when nobody did anything: a look that must not put off the idle end.
   */
  person(token: string, seen?: 'quietly'): Promise<KnownPerson | { readonly ranOut: StaffId } | null>;
  /** Whether it began within the last five minutes: proof enough where there is no password to ask for. */
  justBegun(session: string): Promise<boolean>;
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
  /** It has a socket open to this process now. */
  readonly connected: boolean;
}
/** devices.ts: pairing, keys, what each screen painted. */
export interface Devices {
  /**
   * A code for a screen to show, in two groups of four; it ends in ten minutes.
   * @param origin who asks, to count pairings that are open at once.
   * @throws Answered too-many-requests
   */
  beginPairing(
    kind: 'wall' | 'shared',
    origin: string,
  ): Promise<{ code: string; poll: string; ends: EpochMs }>;
  /** The key comes out exactly once. */
  claim(
    poll: string,
  ): Promise<{ state: 'waiting' | 'over' } | { state: 'paired'; key: string; device: KnownDevice }>;
  /**
   * A shared device always shows the whole board, a wall never.
   * @throws Answered no-such-pairing-code (wrong, over, or begun for the other kind), invalid-request
   */
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
  /** It has one more socket open here; call what comes back when that closes. */
  connected(device: DeviceId): () => void;
  stop(): Promise<void>;
}

/** signing.ts: the short code on a shared device, and the two minutes it opens. */
export interface Signing {
  /**
   * @param isMember whether somebody is an active member of the device's ward.
   * @throws Answered wrong-code (says how many tries are left), code-locked, not-on-this-ward,
   *   not-a-shared-device
   */
  open(
    device: KnownDevice,
    who: { staff?: StaffId | undefined; badge?: string | undefined },
    code: string,
    isMember: (staff: StaffId) => boolean,
  ): Promise<{ token: string; staff: StaffId; until: EpochMs }>;
  /** Whose two minutes these are; null once they are over, on another device, or when their account is off. */
  person(token: string, device: KnownDevice): Promise<KnownPerson | null>;
  close(token: string): Promise<void>;
  /** A full sign-in or a new code frees the person again on every device. */
  unlock(staff: StaffId): Promise<void>;
}

export type Looked =
  | 'read-stay'
  /** At most one an hour for each person and ward; so is `read-board-then`, the board as of an earlier time. */
  | 'read-board-whole'
  | 'read-board-then'
  | 'export-stay'
  | 'erase-stay'
  | 'erase-staff'
  | 'break-glass'
  | 'review-glass'
  | 'read-access-log'
  | 'read-concerns'
  | 'sign-in'
  | 'sign-in-refused'
  | 'code-refused'
  | 'account-invited'
  | 'account-switched'
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
  /**
   * Writes what waits; awaited by export, erasure and closing.
   * @throws LogUnavailable, or what the database said; the lines go on waiting.
   */
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
  /** Newest first; `looked` counts what that person read on the ward while it was open. */
  list(ward: WardId): Promise<readonly (GlassRecord & { readonly looked: number })[]>;
  /** @throws Answered no-such-glass, own-glass (nobody reviews their own), conflict (reviewed already) */
  review(ward: WardId, glass: string, by: StaffId, words: string): Promise<void>;
}

/** retention.ts: which stays are over, and whether what they held was erased. */
export interface Retention {
  /** Days names and texts are kept after the end of a stay; null when nobody has set it. */
  readonly keepDays: number | null;
  /** Stays of the ward that ended before this instant, longest ago first. */
  endedBefore(
    ward: WardId,
    before: EpochMs,
  ): Promise<readonly { readonly stay: StayId; readonly ended: EpochMs; readonly erased: boolean }[]>;
  erased(stay: StayId): Promise<boolean>;
  /** Wards beside this one whose log has a stay of the same id: its texts are under the same key. */
  alsoOn(ward: WardId, stay: StayId): Promise<readonly WardId[]>;
}

/** single-sign-on.ts: OpenID Connect, authorisation code with PKCE, state and nonce. Null when not set up. */
export interface SingleSignOn {
  readonly label: string;
  /** The wards whose roles the groups give: there a role without a group is taken away. */
  readonly wards: readonly WardId[];
  /**
   * Where to send the browser, and what to keep in a short-lived sealed cookie until it comes back.
   *
   * @throws Answered sign-on-away
   */
  begin(returnTo: string): Promise<{ url: string; kept: string }>;
  /** @throws Answered sign-on-failed, sign-on-away */
  finish(
    currentUrl: URL,
    kept: string,
  ): Promise<{
    issuer: string;
    subject: string;
    name: string;
    wide: boolean;
    /** Roles by ward as the groups give them. */
    roles: ReadonlyMap<WardId, Role>;
    returnTo: string;
  }>;
}
export const ACCOUNTS = Symbol('Accounts');
export const SESSIONS = Symbol('Sessions');
export const DEVICES = Symbol('Devices');
export const SIGNING = Symbol('Signing');
export const ACCESS_LOG = Symbol('AccessLog');
export const GLASS = Symbol('Glass');
export const RETENTION = Symbol('Retention');
export const SINGLE_SIGN_ON = Symbol('SingleSignOn');
export const GATE = Symbol('Gate');
