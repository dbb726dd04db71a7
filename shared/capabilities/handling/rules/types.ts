import type { Stated } from '../../../kernel/stated.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StageStanding } from '../../assessments/rules/seen.ts';
import type { Side, WalkingSupport } from '../../assessments/values.ts';
import type { Because } from '../../board/because.ts';
import type { HoldView, TierView, TrustView } from '../../board/moving-view.ts';
import type { Limb, Order, Precaution, WeightBearing } from '../../orders/values.ts';
import type { AttachmentKind, Fence, Weight } from '../../stays/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { OnOwn } from '../values.ts';

export type { Stated };

/** What the handling rules need to know of a person (design: capability). Never stored; derived. */
export interface Capability {
  /** The lesser of the order and what was seen; not yet seen standing = none. */
  readonly weightBearing: Readonly<Record<'left-leg' | 'right-leg', WeightBearing>>;
  /** Of the whole person, as the tables ask it. */
  readonly bears: 'full' | 'partial' | 'none';
  readonly followsInstructions: 'yes' | 'no' | 'not known';
  /** The worst of the last 24 h decides help. */
  readonly waitsForHelp: 'yes' | 'no' | 'varies' | 'not known';
  /** Arms that were seen to push and that no order stops. */
  readonly armStrength: 'both' | 'one' | 'none' | 'not known';
  /** Grip on a side whose arm an order stops does not count. */
  readonly grip: 'both' | 'one' | 'none' | 'not known';
  /** Seen to come to the edge of the bed free, with nobody helping. */
  readonly comesAlone: boolean;
  /** Seen at the edge of the bed with nothing holding, on whatever day. */
  readonly sitsUnheld: boolean;
  /** The same, cleared in an assessment of the same ward day. */
  readonly sittingBalance: boolean;
  readonly assists: 'fully' | 'partly' | 'not';
  readonly strongerSide: Side | null;
  readonly weightKg: number | null;
  readonly weightMarked: 'measured' | `estimated, ${number} % added` | 'unknown';
  /** How far up the stages the person may be taken by the tier, for the edge, stand and walk table. */
  readonly cleared: ReadonlySet<string>;
  readonly clearedFree: ReadonlySet<string>;
  /** How each stage was last found, by the same keys; a stage never tested is not in it. */
  readonly standings: ReadonlyMap<string, StageStanding>;
  readonly because: readonly Because[];
  /** The next instant at which this can change with no new fact; null when there is none. */
  readonly nextChange: EpochMs | null;
}

/** Everything in force at an instant that bears on how to move the person. Assembled by the board room. */
export interface PlanInput {
  readonly t: EpochMs;
  /** The entry of the arrival: what was never recorded was not recorded since. */
  readonly arrival: EventId | null;
  readonly rules: RulesDocument;
  readonly tier: TierView;
  readonly capability: Capability;
  readonly trust: TrustView;
  readonly holds: readonly HoldView[];
  readonly orders: {
    readonly activity: Stated<Extract<Order, { about: 'activity' }>['most']> | null;
    readonly weightBearing: ReadonlyMap<Limb, Stated<Extract<Order, { about: 'weight-bearing' }>>>;
    readonly precautions: ReadonlyMap<Precaution, Stated<true>>;
    readonly brace: Stated<true> | null;
  };
  readonly attachments: readonly Stated<{
    kind: AttachmentKind;
    needsOwnPerson: boolean;
    disconnects: string;
  }>[];
  readonly weight: Stated<Weight> | null;
  /** Set, not taken back, and no trigger since. */
  readonly onOwn: Stated<OnOwn> | null;
  /** "Seen walking steadily on arrival", while it holds. */
  readonly seenWalking: Stated<WalkingSupport> | null;
  /** The support last seen in use. */
  readonly walkingSupport: Stated<WalkingSupport> | null;
  /** A pressure drop without symptoms at the last pressure set: one more person. */
  readonly pressureDrop: Stated<true> | null;
  /** First time up since surgery or bed rest is still ahead, or was done free and is to be repeated held safe. */
  readonly firstTimeUpPending: Stated<true | 'to-be-repeated'> | null;
  /** Last sedative given (a sedation trigger). */
  readonly sedatedAt: Stated<true> | null;
  readonly everWalkedHere: boolean;
  readonly fence: Fence | null;
  /** Spine or pelvis in doubt (fracture unclear, unstable): not known is then a hold. */
  readonly spineOrPelvisInDoubt: Stated<true> | null;
}
