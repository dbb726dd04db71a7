/** How far the log goes, and since when the projection trails it. */
import type { EpochMs } from '@footboard/shared/kernel/times';

export class LogHead {
  position = 0;
  trailingSince: EpochMs | null = null;

  /** `head` is a position that was seen; what was seen before is never taken back. */
  note(head: number, projected: number, now: () => EpochMs): void {
    this.position = Math.max(this.position, head);
    if (this.position <= projected) this.trailingSince = null;
    else this.trailingSince ??= now();
  }
}
