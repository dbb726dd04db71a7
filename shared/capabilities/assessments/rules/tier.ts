import type { EpochMs } from '../../../kernel/times.ts';
import type { TierView, TrustView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../handling/rules/types.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ProtocolLookup } from './protocol.ts';

export interface TierInput {
  /** Effective facts of one stay, ordered by occurred, rank, event id. Those after `t` do not count. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly protocols: ProtocolLookup;
}

export interface TierJudgement {
  readonly view: TierView;
  /** Meanings of the stages cleared with all before them cleared (`clear`, `upright`, `edge` ...). */
  readonly cleared: ReadonlySet<string>;
  /** Those of them cleared on one's own; the others were held safe. */
  readonly clearedFree: ReadonlySet<string>;
  /** The latest assessment by a qualified author that tested something. */
  readonly assessment: Fact | null;
  readonly everWalked: boolean;
  readonly pressureDrop: Stated<true> | null;
  readonly conflicts: TrustView['conflicts'];
}

export function judgeTier(_input: TierInput): TierJudgement {
  return {
    view: {
      word: 'Not known',
      notch: null,
      protocol: null,
      oneLeg: null,
      secured: false,
      at: null,
      by: null,
      because: [{ rule: 'tier/not-known', facts: [], words: 'Not assessed on this ward' }],
    },
    cleared: new Set(),
    clearedFree: new Set(),
    assessment: null,
    everWalked: false,
    pressureDrop: null,
    conflicts: [],
  };
}
