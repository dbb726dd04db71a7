/** What every answer to a malformed request must be. */
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { commandAccepted, problem } from '@footboard/shared/wire/http';
import { ROUTES } from '@footboard/shared/wire/routes';
import type { Input } from './inputs.ts';
import type { Answer } from './wire.ts';

/** What an answer says was written, so that everything else must be as before. */
export interface Written {
  readonly events: number;
  /** Outcomes of commands: an accepted one and one refused by a rule are stored. */
  readonly outcomes: number;
  /** Tables that an accepted request of this address writes. */
  readonly tables: readonly string[];
}
export interface Verdict {
  /** What is wrong with the answer; null when nothing is. */
  readonly fault: string | null;
  readonly written: Written | null;
  readonly status: number;
}

const NOTHING: Written = { events: 0, outcomes: 0, tables: [] };
/** A role changed on the staff list ends that person's sessions. */
const BY_COMMAND = ['event', 'command_outcome', 'ward_head', 'text_kept', 'text_key', 'account', 'session'];
const BY_NAME: Readonly<Record<string, readonly string[]>> = {
  SignIn: ['session', 'account'],
  SignOut: ['session', 'signing_window'],
  ChangeSecret: ['account', 'session'],
  AcceptInvitation: ['account', 'invitation', 'session'],
  MakeAnyAccount: ['account', 'invitation'],
  MakeAccount: ['account', 'invitation'],
  InviteAnyAgain: ['invitation'],
  InviteAgain: ['invitation'],
  SwitchAnyAccount: ['account', 'session', 'invitation'],
  SwitchAccount: ['account', 'session', 'invitation'],
  BeginPairing: ['pairing'],
  ClaimPairing: ['pairing'],
  ApproveDevice: ['device', 'pairing'],
  RevokeDevice: ['device'],
  OpenSigning: ['signing_window'],
  CloseSigning: ['signing_window'],
  BreakGlass: ['glass'],
  ReviewGlass: ['glass'],
  EraseStay: ['text_key', 'text_kept', 'vault_seal'],
  TellConcern: ['handling_concern'],
  // A link that makes: each sheet has a serial of its own, and what it shows is remembered.
  PaperSheet: ['paper_sheet'],
};

/** Of the inside nothing may show: a stack, a file, a statement, a name of a table's parts. */
export const INSIDE =
  /\bat \S+ \(|node_modules|\.[cm]?[tj]s:\d|\bselect\b.+\bfrom\b|\binsert into\b|relation "|syntax error at|ECONN|ENOENT|TypeError|RangeError|ZodError|PGlite|kysely/i;
/** An answer must not be many times as long as what was asked. */
const longest = (input: Input): number => 16 * 1024 + 2 * (input.body?.length ?? 0);
/** Said by Node itself before the program is asked, without a body: no Host, or an Expect it does not know. */
const BARE: ReadonlySet<number> = new Set([400, 417]);

export function judge(input: Input, answer: Answer | null): Verdict {
  if (answer === null) {
    // Who asks for a sheet and hangs up has it made: it stands in the list of sheets.
    const written = input.unframed && input.method === 'GET' ? writtenBy(input, 0, '') : null;
    return verdict(0, input.unframed ? null : 'closed the connection without an answer', written);
  }
  const { status, headers, body } = answer;
  const text = body.toString('utf8');
  if (answer.more) return verdict(status, `more than one answer: ${text.slice(0, 600)}`);
  const type = headers.get('content-type') ?? '';
  if (status >= 500)
    return verdict(status, pageNotBuilt(status, text) ? null : `${status} ${text.slice(0, 300)}`);
  if (status < 400) return verdict(status, null, writtenBy(input, status, text));
  if (input.method === 'HEAD') return verdict(status, null);
  if (input.what.includes('no host') && text === '' && BARE.has(status)) return verdict(status, null);
  if (!type.startsWith('application/problem+json'))
    return verdict(status, `${status} as "${type}": ${text.slice(0, 300)}`);
  return problemVerdict(input, status, text, headers);
}

function problemVerdict(input: Input, status: number, text: string, headers: Answer['headers']): Verdict {
  const most = longest(input);
  const parsed = problem.safeParse(jsonOf(text));
  if (!parsed.success) return verdict(status, `no problem document: ${text.slice(0, 300)}`);
  const said = parsed.data;
  const inside = INSIDE.exec(
    `${said.title} ${said.detail} ${said.remedy} ${JSON.stringify(said.errors ?? [])}`,
  );
  const fault =
    said.status !== status
      ? `says ${said.status}, is ${status}`
      : said.detail.length < 6 || said.remedy.length < 6
        ? `says too little: ${text.slice(0, 300)}`
        : inside
          ? `shows the inside: ${inside[0]}`
          : text.length > most
            ? `${text.length} characters of problem`
            : status === 429 && !/^\d+$/.test(headers.get('retry-after') ?? '')
              ? '429 without Retry-After in seconds'
              : null;
  // A rule's refusal (422) is stored like an acceptance, and says whether it is told again; of a preview nothing is.
  const stored = status === 422 && said.repeated === false && commandOf(input) !== null;
  return verdict(status, fault, { ...NOTHING, outcomes: stored ? 1 : 0 });
}

const pathOf = ({ path }: Input): string => (path.split('?')[0] ?? '').replace(/\/$/, '');
/** The command that is sent; null where none is. */
const commandOf = (input: Input): string | null =>
  /^\/api\/wards\/[^/]+\/commands\/([^/]+)$/i.exec(pathOf(input))?.[1] ?? null;

function writtenBy(input: Input, status: number, text: string): Written {
  if (!['GET', 'POST', 'DELETE'].includes(input.method)) return NOTHING;
  const path = pathOf(input);
  const command = commandOf(input);
  if (command !== null && COMMAND_TYPES.has(decodeURIComponent(command))) {
    const accepted = commandAccepted.safeParse(jsonOf(text));
    if (!accepted.success || status !== 200) return NOTHING;
    const { repeated, events } = accepted.data;
    return repeated ? NOTHING : { events: events.length, outcomes: 1, tables: BY_COMMAND };
  }
  const route = ROUTES.find(
    (one) =>
      one.method === input.method.toLowerCase() &&
      new RegExp(`^${one.path.replaceAll(/\{\w+\}/g, '[^/]+')}$`, 'i').test(path),
  );
  return { ...NOTHING, tables: BY_NAME[route?.name ?? ''] ?? [] };
}

const verdict = (status: number, fault: string | null, written: Written | null = null): Verdict => ({
  status,
  fault,
  written,
});
const pageNotBuilt = (status: number, text: string) =>
  status === 503 && text.startsWith('The screens are not built');
function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
