-- Near misses and strain that staff tell of: apart from the log, the record and every projection.
-- No stay, no bed, no device, no order of arrival: an id made by the screen, and the hour it was told in.
create table handling_concern (
  concern text   not null primary key,
  ward    text   not null,
  -- Epoch milliseconds, cut to the full hour.
  at      bigint not null,
  kind    text   not null,
  about   text,
  -- What was said afterwards names what it belongs to.
  adds    text,
  -- Whoever told it, only where they chose to be named.
  staff   text,
  -- Sealed words.
  words   bytea
);
create index handling_concern_ward on handling_concern (ward, at);
create trigger handling_concern_is_kept before update or truncate on handling_concern
  for each statement execute function footboard_keep_as_it_is();
