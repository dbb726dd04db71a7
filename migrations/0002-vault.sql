-- Personal data beside the log. A subject is a stay or a staff member; its key is wrapped by a
-- master key that this database never sees.

create table text_key (
  subject      text not null,
  wrapped_key  bytea,
  destroyed_at timestamptz,
  constraint text_key_pkey primary key (subject)
);

create table text_kept (
  ref        text  not null,
  subject    text  not null constraint text_kept_subject references text_key (subject),
  ciphertext bytea not null,
  constraint text_kept_pkey primary key (ref)
);

-- One row: proves that the master key at hand is the one this database was begun with.
create table vault_seal (
  only_one boolean not null default true primary key check (only_one),
  proof    bytea   not null
);

create function footboard_key_only_dies() returns trigger language plpgsql as $$
begin
  if old.destroyed_at is not null or new.wrapped_key is not null
     or new.destroyed_at is null or new.subject is distinct from old.subject then
    raise exception 'the key of % can only be destroyed, and only once', old.subject
      using errcode = 'FB002';
  end if;
  return new;
end $$;

create trigger text_key_only_dies before update on text_key
  for each row execute function footboard_key_only_dies();
create trigger text_key_is_kept before delete or truncate on text_key
  for each statement execute function footboard_keep_as_it_is();
create trigger text_kept_is_kept before update or delete or truncate on text_kept
  for each statement execute function footboard_keep_as_it_is();
