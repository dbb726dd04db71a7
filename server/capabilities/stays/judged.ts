/** What the pure rules make of a stay at an instant, for decisions that rest on the tier or the plan. */
import { judgeTier } from '@footboard/shared/capabilities/assessments/rules/tier';
import type { TierInput, TierJudgement } from '@footboard/shared/capabilities/assessments/rules/tier';
import { protocolLookup } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { DecideContext } from '../../commanding/decider.ts';
import { factsBy } from './standing.ts';
import type { Standing } from './standing.ts';

export const tierInput = (context: DecideContext, standing: Standing, t: EpochMs): TierInput => ({
  facts: factsBy(standing.record, t),
  t,
  calendar: context.calendar!,
  rules: rulesOf(context.ward!),
  protocols: protocolLookup(context.ward!.protocols),
});

export const tierAt = (context: DecideContext, standing: Standing, t: EpochMs): TierJudgement =>
  judgeTier(tierInput(context, standing, t));

export const viewAt = (context: DecideContext, standing: Standing, t: EpochMs): StayView =>
  evaluateStay(standing.record, context.ward!, context.calendar!, t).view;

/**
 * The instants a permission is judged at: when it is said to have been given, and now, so that what
 * was entered in between can only keep it back. A closed stay is judged at the first alone.
 */
export const judgedAt = (context: DecideContext, standing: Standing): readonly EpochMs[] =>
  standing.ended !== null || context.now <= context.occurred
    ? [context.occurred]
    : [context.occurred, context.now];
