import { shallowRef, type ShallowRef } from 'vue';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { protocolDocument, type Protocol } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { DEFAULT_RULES, type RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { protocolsInForce, rulesInForce } from '@footboard/shared/wire/documents';
import { getPage } from '../../asking/get-page.ts';

export interface WardDocuments {
  readonly protocol: Protocol;
  readonly rules: RulesDocument;
  /** True once the ward's own documents were read; until then the defaults stand and the page says so. */
  readonly read: boolean;
}

/** The ward's protocol and limits in force. A check that is under way keeps the version it was begun with. */
export function useWardDocuments(ward: string): Readonly<ShallowRef<WardDocuments>> {
  const documents = shallowRef<WardDocuments>({
    protocol: DEFAULT_PROTOCOL,
    rules: DEFAULT_RULES,
    read: false,
  });
  void Promise.all([
    getPage(`/api/wards/${ward}/protocols`, protocolsInForce),
    getPage(`/api/wards/${ward}/rules`, rulesInForce),
  ]).then(([protocols, rules]) => {
    if (!protocols.ok || !rules.ok) return;
    const { inForce, documents: all } = protocols.page;
    const protocol = all
      .map((document) => protocolDocument.safeParse(document).data)
      .find((p) => p?.id === inForce.id && p.version === inForce.version);
    if (protocol) documents.value = { protocol, rules: rules.page.document, read: true };
  });
  return documents;
}
