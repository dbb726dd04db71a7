import { handsOf } from '@footboard/shared/capabilities/dayplan/rules/pairing';
import { roundOn } from '@footboard/shared/capabilities/dayplan/rules/round';
import type { Round } from '@footboard/shared/capabilities/dayplan/rules/round';
import type { ListSeen } from '@footboard/shared/capabilities/dayplan/values';
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { toIso } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { RoundPage } from '@footboard/shared/wire/round';
import { canonical, hashText } from '../../log/canonical.ts';
import type { Boards } from '../../projecting/board.ts';
import { boardNow } from '../board/queries.ts';

export interface RoundAsked {
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly board: BoardView;
  readonly t: EpochMs;
  readonly asker: StaffId | null;
}

/** The weights by which the round ranks: the version that the ward published, and what it holds. */
export function weightsOf(rules: RulesDocument): ListSeen['weights'] {
  let weights = hashes.get(rules);
  if (!weights) {
    weights = { version: rules.version, hash: hashText(canonical(rules.round)) };
    hashes.set(rules, weights);
  }
  return weights;
}
const hashes = new WeakMap<RulesDocument, ListSeen['weights']>();

/** The list as one text: the same facts, weights, instant and asker give the same bytes. */
export const roundText = (round: Round): string => canonical(round);

export const roundAt = ({ ward, calendar, board, t, asker }: RoundAsked): Round =>
  roundOn({ board, t, calendar, rules: rulesOf(ward), asker, hands: handsOf(ward, t) });

/** The round as of now, with the asker's own visit first. */
export function roundPage(
  boards: Boards,
  ward: WardState,
  calendar: WardCalendar,
  asked: { readonly now: EpochMs; readonly asker: StaffId | null },
  remember: (digest: string, text: string) => void = () => undefined,
): RoundPage {
  const { p, board } = boardNow(boards, ward.ward);
  const t = asked.now;
  const round = roundAt({ ward, calendar, board, t, asker: asked.asker });
  const text = roundText(round);
  const digest = hashText(text);
  remember(digest, text);
  return {
    ward: ward.ward,
    position: p,
    at: t,
    ...round,
    seen: {
      position: p,
      at: toIso(t),
      weights: weightsOf(rulesOf(ward)),
      digest,
    },
  } as unknown as RoundPage;
}
