import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/protocol';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { ProtocolsInForce, RulesInForce } from '@footboard/shared/wire/documents';
import type { WardList } from '@footboard/shared/wire/http';
import type { Boards } from '../../projecting/board.ts';

/** Every ward that has a board, with what the choice of a ward and screen needs. */
export function wardList(
  boards: Boards,
  { demo, trialStorage, open }: { demo: boolean; trialStorage: boolean; open: boolean },
): WardList {
  const wards = boards.wards().flatMap((ward) => {
    const board = boards.snapshot(ward)?.board;
    return board ? [{ ward, name: board.name, zone: board.zone, beds: board.beds.length }] : [];
  });
  return { wards: wards.toSorted((a, b) => a.name.localeCompare(b.name)), demo, trialStorage, open };
}

/** The ward's limits and validities with their sources, owners and review dates. */
export const rulesInForce = (ward: WardState): RulesInForce => ({
  ward: ward.ward,
  published: ward.rules !== null,
  document: rulesOf(ward),
});

/** The ward's newest own protocol is in force, else the default one; older versions stay readable. */
export function protocolsInForce(ward: WardState): ProtocolsInForce {
  const { id, version } = ward.protocols.at(-1) ?? DEFAULT_PROTOCOL;
  return {
    ward: ward.ward,
    inForce: { id, version },
    documents: [DEFAULT_PROTOCOL, ...ward.protocols.map((published) => published.document)] as never,
  };
}
