import type { EventId } from '../../../kernel/ids.ts';
import type { Stated } from '../../../kernel/stated.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Cooperation } from '../values.ts';

/**
 * What was seen of waiting for help and following instructions, check by check. Someone who may only
 * make it safer says "yes": what stood before stands; before anything, the safer answer.
 */
export class CooperationSeen {
  readonly all: Stated<Cooperation>[] = [];

  take(fact: Fact, value: Cooperation, qualified: boolean): void {
    const before = this.all.at(-1)?.value;
    const safe: Cooperation = qualified
      ? value
      : {
          waitsForHelp: value.waitsForHelp === 'yes' ? (before?.waitsForHelp ?? 'no') : value.waitsForHelp,
          followsInstructions:
            value.followsInstructions === 'yes' ? (before?.followsInstructions ?? 'no') : 'no',
        };
    this.all.push({ value: safe, fact: fact.id satisfies EventId, at: fact.occurred });
  }
}
