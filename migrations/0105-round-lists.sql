-- The round's list as it was when somebody acted on it, beside the log and made from it: a list is a pure
-- function of the log up to a position and an instant. Kept so that a later program can show what an
-- earlier one showed. Instants are epoch milliseconds; no name and no free text stands in it.
create table round_list (
  ward            text    not null,
  -- Where in the log the entry "list acted on" stands.
  position        bigint  not null,
  event           text    not null,
  stay            text    not null,
  act             text    not null,
  instead         text,
  recorded        bigint  not null,
  list_position   bigint  not null,
  list_at         bigint  not null,
  weights_version integer not null,
  weights_hash    text    not null,
  -- As the screen had it, and as it was made again from the log.
  digest_said     text    not null,
  digest          text    not null,
  -- From 1; null when the person was not listed.
  place           integer,
  listed          integer not null,
  -- The list, canonical JSON.
  list            text    not null,
  primary key (ward, position)
);
create unique index round_list_event on round_list (ward, event);
create index round_list_at on round_list (ward, list_at);
create trigger round_list_is_kept before update or delete or truncate on round_list
  for each statement execute function footboard_keep_as_it_is();
