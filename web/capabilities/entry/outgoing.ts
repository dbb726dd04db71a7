/** How entries leave the page they were written on: into the outbox, and from there to the server. */
import { inject, type InjectionKey } from 'vue';
import { useOutbox, type Sender } from '../../outbox/outbox.ts';

export type { Sender };
/** Another way to deliver, for a page without a server. */
export const SENDER: InjectionKey<Sender> = Symbol('Sender');

/** The outbox, delivering as this page delivers. */
export function useOutgoing(): ReturnType<typeof useOutbox> {
  const outbox = useOutbox();
  const by = inject(SENDER, null);
  if (by) outbox.deliverBy(by);
  return outbox;
}
