-- The event log: one contiguous, commit-ordered position per ward. Floor: PostgreSQL 15.
--
-- Instants are bigint milliseconds since 1970-01-01T00:00Z, the same number that the program, the
-- wire and the hash chain use, so that nothing is converted (or rounded) between them. The view
-- event_readable shows them as timestamps. There are no CHECK constraints: what an event may be is
-- said once, by its schema in shared/, and checked before the append.

create table ward_head (
  ward      text   not null primary key,
  position  bigint not null,
  chain     bytea  not null,
  recorded  bigint not null
) with (fillfactor = 50);

create table event (
  ward           text    not null,
  position       bigint  not null,
  stream         text    not null,
  version        integer not null,
  id             text    not null,
  type           text    not null,
  schema_version integer not null,
  payload        text    not null,
  payload_hash   text    not null,
  occurred       bigint  not null,
  precision      text    not null,
  entered        bigint  not null,
  entered_offset integer not null,
  recorded       bigint  not null,
  author_staff   text    not null,
  author_role    text    not null,
  source         text    not null,
  command_id     text    not null,
  chain          bytea   not null,
  constraint event_pkey primary key (ward, position),
  constraint event_stream_version unique (ward, stream, version),
  constraint event_id_once unique (ward, id)
);

create table command_outcome (
  ward         text   not null,
  command_id   text   not null,
  name         text   not null,
  body_hash    text   not null,
  author_staff text   not null,
  author_role  text   not null,
  outcome      text   not null,
  result       text   not null,
  -- The last event this command appended to this ward, null when it appended none.
  last_event   text,
  recorded     bigint not null,
  constraint command_outcome_pkey primary key (ward, command_id)
);

create view event_readable as
  select ward, position, stream, version, type, payload,
         to_timestamp(occurred / 1000.0) as occurred,
         to_timestamp(recorded / 1000.0) as recorded,
         author_staff, author_role, source, id, command_id
    from event;

create function footboard_keep_as_it_is() returns trigger language plpgsql as $$
begin
  raise exception '% on % is refused: nothing recorded is lost or overwritten', tg_op, tg_table_name
    using errcode = 'FB002',
          hint = 'Record an addendum, an amendment, a correction or a retraction instead; '
              || 'personal data is erased by destroying its key.';
end $$;

create trigger event_is_kept before update or delete or truncate on event
  for each statement execute function footboard_keep_as_it_is();
create trigger command_outcome_is_kept before update or delete or truncate on command_outcome
  for each statement execute function footboard_keep_as_it_is();
