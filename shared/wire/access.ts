/** Shapes of signing in, devices, breaking the glass and the access log: requests and answers. */
import { z } from 'zod';
import { role } from '../kernel/author.ts';
import { eventId, opaqueId, staffId, stayId, wardId } from '../kernel/ids.ts';
import { ACTORS, BOARD_LEVELS } from '../capabilities/people/policy/document.ts';

export const boardLevel = z.enum(BOARD_LEVELS);
export const actor = z.enum(ACTORS);

/** A one-time secret (invitation, pairing poll): base64url, 32 bytes. */
const token = z.string().regex(/^[A-Za-z0-9_-]{43}$/, 'open the link again, whole, as it was given to you');
const signInName = z
  .string()
  .trim()
  .min(3, 'at least 3 characters')
  .max(80)
  .regex(/^[^\s]+$/, 'no spaces');
/** Length only, as NIST SP 800-63B asks; common ones are refused by the server. */
const newPassword = z.string().min(12, 'at least 12 characters').max(200);
/** The short personal code for shared devices. */
const code = z.string().regex(/^\d{6,8}$/, 'six to eight digits');
const badge = z.string().trim().min(4).max(200);

export const signInRequest = z.strictObject({ signInName, password: z.string().min(1).max(200) });
export const invitationRequest = z.strictObject({ token });
export const acceptInvitationRequest = z.strictObject({
  token,
  /** Asked on the first run, and when the account has none yet. */
  name: z.string().trim().min(1).max(80).optional(),
  signInName,
  password: newPassword,
  code: code.optional(),
});
export const changeSecretRequest = z.strictObject({
  /** Left out by somebody who comes through single sign-on alone, within 5 min of signing on. */
  password: z.string().min(1).max(200).optional(),
  newPassword: newPassword.optional(),
  newCode: code.optional(),
  newBadge: badge.optional(),
});

/** Opens two minutes of signing for one person on this device: chosen name or scanned badge, then the code. */
export const signingRequest = z.strictObject({ staff: staffId.optional(), badge: badge.optional(), code });
export const signingAnswer = z.strictObject({ staff: staffId, until: z.number() });

/** What an invitation is for, before it is used. */
export const invitationAnswer = z.strictObject({
  kind: z.enum(['first-run', 'account']),
  name: z.string().nullable(),
  ends: z.number(),
});

/** Who this browser is for the server, and what may be done here. Never cached. */
export const me = z.strictObject({
  /** `open`: sign-in is off (the demo); whoever holds the device says who they are. */
  access: z.enum(['accounts', 'open']),
  /** Nobody can sign in yet: the link that the server printed makes the first administrator. */
  firstRun: z.boolean(),
  singleSignOn: z.strictObject({ label: z.string() }).nullable(),
  person: z
    .strictObject({
      staff: staffId,
      name: z.string(),
      wide: z.boolean(),
      via: z.enum(['session', 'signing']),
      /** When it ends by itself: the idle end of a session, the end of the signing window. */
      until: z.number(),
    })
    .nullable(),
  device: z
    .strictObject({
      device: opaqueId,
      kind: z.enum(['wall', 'shared']),
      ward: wardId,
      level: boardLevel,
      place: z.string(),
    })
    .nullable(),
  /** The wards where this browser may do something; `actions` are those of the policy document. */
  wards: z.array(
    z.strictObject({
      ward: wardId,
      name: z.string(),
      actor,
      level: boardLevel,
      actions: z.array(z.string()),
    }),
  ),
});
export type Me = z.infer<typeof me>;

export const account = z.strictObject({
  account: opaqueId,
  staff: staffId,
  name: z.string(),
  wide: z.boolean(),
  active: z.boolean(),
  /** invited: a link is out; ready: can sign in; outside: single sign-on only; none: neither yet. */
  state: z.enum(['invited', 'ready', 'outside', 'none']),
  hasCode: z.boolean(),
});
export const accountList = z.strictObject({ accounts: z.array(account) });
export const newAccountRequest = z.strictObject({
  staff: staffId,
  name: z.string().trim().min(1).max(80),
  wide: z.boolean().default(false),
});
/** The path with the token behind `#`, so that it reaches no log: shown once, to be handed over. */
export const invitationMade = z.strictObject({ account: opaqueId, path: z.string(), ends: z.number() });
export const accountActiveRequest = z.strictObject({ active: z.boolean() });

export const beginPairingRequest = z.strictObject({ kind: z.enum(['wall', 'shared']) });
/** `code` is shown on the screen to be paired; `poll` stays in that browser. */
export const pairingBegun = z.strictObject({ code: z.string(), poll: token, ends: z.number() });
export const claimPairingRequest = z.strictObject({ poll: token });
export const pairingState = z.strictObject({ state: z.enum(['waiting', 'paired', 'over']) });
export const approvePairingRequest = z.strictObject({
  code: z.string().trim().min(8).max(12),
  kind: z.enum(['wall', 'shared']),
  /** What a wall shows; a shared device always shows the whole board. */
  level: boardLevel,
  /** Where it hangs or lies ("station north"); never a person's name. */
  place: z.string().trim().min(1).max(40),
});
export const deviceLine = z.strictObject({
  device: opaqueId,
  kind: z.enum(['wall', 'shared']),
  level: boardLevel,
  place: z.string(),
  approved: z.number(),
  approvedBy: z.string(),
  seen: z.number().nullable(),
  /** Feed number last painted, and when; page: the version of the screen's program. */
  painted: z.number().nullable(),
  paintedAt: z.number().nullable(),
  page: z.string().nullable(),
  connected: z.boolean(),
  revoked: z.number().nullable(),
});
export const deviceList = z.strictObject({ feed: z.number(), devices: z.array(deviceLine) });

export const glassReason = z.enum(['emergency', 'cross-cover', 'transfer-in', 'other']);
export const breakGlassRequest = z.strictObject({
  reason: glassReason,
  words: z.string().trim().min(3, 'say in a few words why').max(500),
});
export const glassLine = z.strictObject({
  glass: opaqueId,
  staff: staffId,
  name: z.string(),
  reason: glassReason,
  words: z.string(),
  began: z.number(),
  ends: z.number(),
  looked: z.number().int(),
  reviewed: z.strictObject({ at: z.number(), by: z.string(), words: z.string() }).nullable(),
});
export const glassList = z.strictObject({ glass: z.array(glassLine) });
export const reviewGlassRequest = z.strictObject({ words: z.string().trim().min(1).max(500) });

export const accessLine = z.strictObject({
  number: z.number(),
  at: z.number(),
  stay: stayId.nullable(),
  staff: staffId.nullable(),
  name: z.string().nullable(),
  device: opaqueId.nullable(),
  what: z.string(),
  words: z.string().nullable(),
});
export const accessLog = z.strictObject({ lines: z.array(accessLine), next: z.number().nullable() });

export const eraseStayRequest = z.strictObject({
  reason: z.enum(['retention-over', 'asked-by-person', 'entered-by-mistake']),
  words: z.string().trim().min(3).max(500),
});
/** The name of somebody who has left: on every ward, with their account. Their entries stay, by id. */
export const eraseStaffRequest = z.strictObject({ words: z.string().trim().min(3).max(500) });
/** Stays that ended longer ago than the ward keeps them, or null when no time is set. */
export const retentionPage = z.strictObject({
  keepDays: z.number().int().nullable(),
  over: z.array(z.strictObject({ stay: stayId, ended: z.number(), erased: z.boolean() })),
});

/**
 * Entries of mine that nobody has signed for, those that disagree with somebody else's, and, for a
 * qualified role, those that wait for a second signature.
 */
export const ownEntries = z.strictObject({
  unconfirmed: z.array(
    z.strictObject({ stay: stayId, event: eventId, occurred: z.number(), words: z.string() }),
  ),
  toCosign: z.array(
    z.strictObject({
      stay: stayId,
      event: eventId,
      occurred: z.number(),
      words: z.string(),
      by: z.strictObject({ staff: staffId, name: z.string(), role }),
    }),
  ),
  /** On people who are in a bed now, until somebody has settled it. The safer of the two stands. */
  disagreeing: z.array(
    z.strictObject({
      stay: stayId,
      event: eventId,
      occurred: z.number(),
      words: z.string(),
      /** Whether mine is the one that stands. */
      stands: z.boolean(),
      against: z.strictObject({
        event: eventId,
        words: z.string(),
        by: z.strictObject({ staff: staffId, name: z.string(), role }),
      }),
    }),
  ),
});
export type OwnEntries = z.infer<typeof ownEntries>;

/** Initials by stay, for walls that were paired to show them. Who does not wish it, and who was erased, is left out. */
export const initialsPage = z.strictObject({ initials: z.record(stayId, z.string().max(8)) });

/** What each paired screen has painted, and which corrections and retractions of the last day some have not. */
export const receiptsPage = z.strictObject({
  feed: z.number(),
  screens: z.array(
    z.strictObject({
      device: opaqueId,
      place: z.string(),
      kind: z.enum(['wall', 'shared']),
      connected: z.boolean(),
      painted: z.number().nullable(),
      paintedAt: z.number().nullable(),
    }),
  ),
  changes: z.array(
    z.strictObject({
      event: eventId,
      stay: stayId,
      recorded: z.number(),
      /** The feed number that carried it; null while no screen had to draw anything new for it. */
      feed: z.number().nullable(),
      /** Devices that have not painted it yet. */
      waiting: z.array(opaqueId),
    }),
  ),
});
export type ReceiptsPage = z.infer<typeof receiptsPage>;
