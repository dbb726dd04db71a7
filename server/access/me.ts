/** Who this browser is for the server, and what may be done here: the page draws itself by it. */
import { POLICY } from '@footboard/shared/capabilities/people/policy/document';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Me } from '@footboard/shared/wire/access';
import type { Streams } from '../commanding/streams.ts';
import type { Boards } from '../projecting/board.ts';
import { actorMay, glassMay } from './gate.ts';
import type { Gate, Pass } from './gate.ts';
import type { Identity } from './identity.ts';
import type { Accounts, Devices, SingleSignOn } from './ports.ts';

export interface MeParts {
  readonly gate: Gate;
  readonly streams: Pick<Streams, 'ward'>;
  readonly boards: Pick<Boards, 'wards'>;
  readonly accounts: Pick<Accounts, 'byStaff' | 'firstRun'>;
  readonly devices: Pick<Devices, 'list'>;
  readonly singleSignOn: Pick<SingleSignOn, 'label'> | null;
}

/** Each pass opens what its actor may, a broken glass what a glass may: together they are what is allowed. */
const actionsOf = (passes: readonly Pass[]): string[] =>
  POLICY.filter(({ action }) =>
    passes.some((pass) => (pass.glass ? glassMay(action) : actorMay(pass.actor, action))),
  ).map(({ action }) => action);

export async function meOf(identity: Identity, parts: MeParts): Promise<Me> {
  const { access } = identity;
  const [firstRun, person, device, wards] = await Promise.all([
    access === 'accounts' && parts.accounts.firstRun(),
    personOf(identity, parts),
    deviceOf(identity, parts),
    wardsOf(identity, parts),
  ]);
  const singleSignOn = parts.singleSignOn && { label: parts.singleSignOn.label };
  return { access, firstRun, singleSignOn, person, device, wards };
}

async function personOf({ person }: Identity, { accounts }: MeParts): Promise<Me['person']> {
  if (!person) return null;
  const { staff, wide, via, until } = person;
  const account = await accounts.byStaff(staff);
  return { staff, name: account?.name ?? '', wide, via, until };
}

async function deviceOf({ device }: Identity, { devices }: MeParts): Promise<Me['device']> {
  if (!device) return null;
  const lines = await devices.list(device.ward);
  return { ...device, place: lines.find((line) => line.device === device.device)?.place ?? '' };
}

async function wardsOf(identity: Identity, { boards, gate, streams }: MeParts): Promise<Me['wards']> {
  const open = identity.access === 'open';
  const all = await Promise.all(
    boards.wards().map(async (ward: WardId) => {
      const { state } = await streams.ward(ward);
      const passes = state ? await gate.passes(identity, ward, state) : [];
      const [first] = passes;
      if (!state || !first) return [];
      // With sign-in off the page asks who somebody is and what they may when it comes to it.
      const { actor, level } = open ? { actor: 'device' as const, level: 'whole' as const } : first;
      const actions = open ? POLICY.map(({ action }) => action) : actionsOf(passes);
      return [{ ward, name: state.name, actor, level, actions }];
    }),
  );
  return all.flat().toSorted((a, b) => a.name.localeCompare(b.name));
}
