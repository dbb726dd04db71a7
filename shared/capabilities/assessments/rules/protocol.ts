/** Protocols as the ward's programs find them: the default one and those the ward published. */
import type { WardState } from '../../wards/context.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import { protocolDocument, type Protocol } from './protocol-document.ts';
import { senseFaults, shapeFaults, type Fault } from './protocol-faults.ts';

export * from './protocol-document.ts';
export { protocolWarnings } from './protocol-faults.ts';

/** Checks a document someone wants to publish. Faults name their place (JSON pointer) and reason. */
export function checkProtocol(document: unknown): { ok: Protocol } | { faults: Fault[] } {
  const parsed = protocolDocument.safeParse(document);
  if (!parsed.success) return { faults: shapeFaults(parsed.error.issues) };
  const faults = senseFaults(parsed.data);
  if (parsed.data.id === DEFAULT_PROTOCOL.id) {
    faults.unshift({ place: '/id', reason: `${DEFAULT_PROTOCOL.id} is Footboard's own: choose another id` });
  }
  return faults.length > 0 ? { faults } : { ok: parsed.data };
}

/** Finds a protocol by the id and version an assessment names; null when there is none. */
export type ProtocolLookup = (id: string, version: number) => Protocol | null;

/** Documents are checked once each, by identity: a ward's state is folded anew only when it publishes. */
const checked = new WeakMap<object, Protocol | null>();
function readable(document: unknown): Protocol | null {
  if (typeof document !== 'object' || document === null) return null;
  const known = checked.get(document);
  if (known !== undefined) return known;
  const parsed = protocolDocument.safeParse(document);
  const protocol = parsed.success ? parsed.data : null;
  checked.set(document, protocol);
  return protocol;
}

export function protocolLookup(published: WardState['protocols']): ProtocolLookup {
  return (wanted, version) => {
    if (wanted === DEFAULT_PROTOCOL.id) {
      return version === DEFAULT_PROTOCOL.version ? DEFAULT_PROTOCOL : null;
    }
    const entry = published.find((p) => p.id === wanted && p.version === version);
    return entry ? readable(entry.document) : null;
  };
}

/** What a check is done under now: the newest readable document that the ward published, else the default. */
export function protocolInForce(published: WardState['protocols']): Protocol {
  for (const { document } of published.toReversed()) {
    const protocol = readable(document);
    if (protocol) return protocol;
  }
  return DEFAULT_PROTOCOL;
}

export { DEFAULT_PROTOCOL };
