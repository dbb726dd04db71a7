/** Rows of migrations/0001-log.sql. Instants are milliseconds since 1970-01-01T00:00Z. */
export interface EventRow {
  readonly ward: string;
  readonly position: number;
  readonly stream: string;
  readonly version: number;
  readonly id: string;
  readonly type: string;
  readonly schema_version: number;
  /** The canonical bytes as they were hashed. */
  readonly payload: string;
  /** SHA-256 of the payload's UTF-8 bytes, hex. */
  readonly payload_hash: string;
  readonly occurred: number;
  readonly precision: string;
  readonly entered: number;
  readonly entered_offset: number;
  readonly recorded: number;
  readonly author_staff: string;
  readonly author_role: string;
  /** Canonical JSON of the source. */
  readonly source: string;
  readonly command_id: string;
  readonly chain: Uint8Array;
}

export interface OutcomeRow {
  readonly ward: string;
  readonly command_id: string;
  readonly name: string;
  readonly body_hash: string;
  readonly author_staff: string;
  readonly author_role: string;
  readonly outcome: 'accepted' | 'refused';
  readonly result: string;
  readonly position: number;
}
