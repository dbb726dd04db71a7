import { isQualified } from '../../../kernel/author.ts';
import type { Stated } from '../../../kernel/stated.ts';
import type { Because } from '../../board/because.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RisingVerdict } from './pressure.ts';
import { outlastsInitial, type RisingLimits } from './pressure-series.ts';
import type { Protocol } from './protocol.ts';
import { sameTime } from './stage-standing.ts';

interface Judged {
  readonly verdict: RisingVerdict;
  readonly fact: Fact;
}

/**
 * What the pressures on rising said, check by check. A fall stands until a later whole set by someone
 * qualified shows none and nothing in it stands against standing. Readings of the first seconds alone,
 * judged by their larger limits, take none away.
 */
export class RisingSeen {
  /** The last check with a fall that still counts. */
  fell: Judged | null = null;
  latest: Judged | null = null;
  /** Whether someone qualified ever measured a whole set in this stay. */
  everWhole = false;

  get drop(): Stated<true> | null {
    return this.fell && { value: true, fact: this.fell.fact.id, at: this.fell.fact.occurred };
  }

  take(fact: Fact, verdict: RisingVerdict, protocol: Protocol, limits: RisingLimits): void {
    this.latest = { verdict, fact };
    this.everWhole ||= verdict.complete && isQualified(fact.author);
    if (verdict.fall === 'yes') this.fell = { verdict, fact };
    else if (
      this.fell &&
      verdict.fall === 'no' &&
      verdict.complete &&
      verdict.standNotCleared.length === 0 &&
      outlastsInitial(verdict.readings, protocol.pressureSet, limits) &&
      isQualified(fact.author) &&
      !sameTime(fact, this.fell.fact, protocol)
    ) {
      this.fell = null;
    }
  }

  /** Which rule fired on which readings, what follows, and what is only shown; each with its check. */
  remarks(): Because[] {
    const out: Because[] = [];
    const say = (rule: string, { fact }: Judged, words: readonly (string | null | undefined)[]) => {
      const said = words.filter(Boolean);
      if (said.length > 0) out.push({ rule, facts: [fact.id], words: said.join('; ') });
    };
    if (this.fell) {
      const { fired, passing, follows } = this.fell.verdict;
      say('rising/fell', this.fell, [...fired.map((f) => f.words), passing, ...follows.words]);
    }
    if (this.latest) {
      const { fall, missing, lyingHigh, heartRateRise, pressureRise } = this.latest.verdict;
      if (fall === 'incomplete') {
        say('rising/incomplete', this.latest, [
          `Pressure on rising INCOMPLETE: ${missing.join(', ')} missing`,
        ]);
      }
      say('rising/shown', this.latest, [lyingHigh?.words, heartRateRise?.words, pressureRise?.words]);
    }
    return out;
  }
}
