/** Who a request comes from, as far as the server can tell. Made once a request (or socket) by Identify. */
import type { DeviceId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { BoardLevel } from '@footboard/shared/capabilities/people/policy/document';
import type { EpochMs } from '@footboard/shared/kernel/times';

/** A screen or phone paired with a ward; its key came with the request. */
export interface KnownDevice {
  readonly device: DeviceId;
  readonly kind: 'wall' | 'shared';
  readonly ward: WardId;
  readonly level: BoardLevel;
}

export interface KnownPerson {
  /** Null for somebody who signs with the short code and has no session. */
  readonly account: string | null;
  readonly staff: StaffId;
  /** Administrator of the whole server. */
  readonly wide: boolean;
  readonly via: 'session' | 'signing';
  /** Id of the session (never its token), to end what it opened when it ends. */
  readonly session: string | null;
  readonly until: EpochMs;
}

export interface Identity {
  /** `open`: sign-in is off; `claimed` is believed (the demo only, never from settings). */
  readonly access: 'accounts' | 'open';
  readonly person: KnownPerson | null;
  readonly device: KnownDevice | null;
  /**
   * Who the request says it comes from, unchecked (header x-footboard-staff, or the staff of a
   * genuine session that has run out). Good for nothing but what the policy lets be unconfirmed, and,
   * with a person signed in, for refusing to take another person's entry for theirs.
   */
  readonly claimed: StaffId | null;
  /** The claim comes from a session that was genuine and ran out by itself. */
  readonly ranOut: boolean;
  /** Counts tries and requests: the device, else the session, else the address. Never logged. */
  readonly origin: string;
}

/** Nobody, from nowhere known. */
export const NOBODY: Identity = {
  access: 'accounts',
  person: null,
  device: null,
  claimed: null,
  ranOut: false,
  origin: 'unknown',
};
