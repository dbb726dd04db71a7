/** One stay to hand over: who, every entry with its words and hashes, and the ward's anchor. */
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId, StayId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { StayExport } from '@footboard/shared/wire/stay-export';
import type { Log } from '../../log/log.ts';
import type { Boards } from '../../projecting/board.ts';
import type { Vault } from '../../vault/vault.ts';
import { staffNames } from '../people/queries.ts';
import { stayPageOf } from './queries.ts';

/** Said in the document itself, so that it can be checked without this program. */
const HOW_TO_VERIFY = [
  'payloadHash is the SHA-256 of the UTF-8 bytes of payload, in hexadecimal digits.',
  'chain is the SHA-256 of the 32 bytes of previous followed by these fields in this order, each written as its length in bytes, a colon and its text in UTF-8: position, ward, stream, version, id, type, schemaVersion, payloadHash, occurred, precision, entered, enteredOffsetMinutes, recorded, author.staff, author.role, source, commandId. ward is ward.ward.',
  'previous of an entry is chain of the entry in front of it in the log of the ward; entries of other people stand between.',
  'GET /api/verify/<ward>?position=<anchor.position>&chain=<anchor.chain> says whether the whole log still leads to this anchor.',
];

export interface ExportPorts {
  readonly boards: Boards;
  readonly log: Log;
  readonly vault: Vault;
  readonly retention: { erased(stay: StayId): Promise<boolean> };
}

/** @throws Answered no-such-stay */
export async function stayExportOf(
  ports: ExportPorts,
  ward: WardState,
  stay: StayId,
  made: { readonly at: EpochMs; readonly by: { readonly staff: StaffId; readonly name: string } | null },
): Promise<StayExport> {
  const page = await stayPageOf(ports, ward, stay);
  const stream = streamKey('stay', stay);
  // The anchor first: entries that come meanwhile lie beyond it, and beyond the page.
  const anchor = await ports.log.anchor(ward.ward);
  const [links, names, erased] = await Promise.all([
    ports.log.links(ward.ward, stream),
    staffNames(ward, ports.vault),
    ports.retention.erased(stay),
  ]);
  const told = new Map(page.timeline.map((entry) => [entry.event, entry]));
  const entries = links.flatMap((link) => {
    const said = told.get(link.id);
    // Recorded after the page was read: it is in the next export.
    if (!said || link.position > anchor.position) return [];
    const { ward: _ward, author, ...hashed } = link;
    const name = names.get(author.staff) ?? said.author.name;
    return [{ ...hashed, author: { ...author, name }, words: said.words, counts: said.counts }];
  });
  return {
    format: 'footboard-stay-export',
    version: 1,
    made: { at: made.at, by: made.by && { staff: made.by.staff, name: made.by.name } },
    ward: { ward: ward.ward, name: ward.name, zone: ward.zone },
    stay,
    ended: page.ended,
    erased,
    identity: page.identity,
    texts: page.texts,
    before: page.previous,
    after: page.next,
    entries,
    anchor,
    howToVerify: HOW_TO_VERIFY,
  };
}
