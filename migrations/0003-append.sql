-- The append: one statement, one round trip, one transaction of its own.

-- The database's clock, apart so that the demo can play another time in its own database.
create function footboard_clock() returns timestamptz language sql volatile as $$
  select clock_timestamp()
$$;

create function footboard_now() returns bigint language sql volatile as $$
  select floor(date_part('epoch', footboard_clock()) * 1000)::bigint
$$;

-- The bytes a link of the chain covers: each field as `length in bytes:text`, so that no two
-- different events read the same. One SQL expression, inlined into the caller's plan.
create function footboard_link_text(
  place bigint, ward text, stream text, version integer, id text, type text, schema_version integer,
  payload_hash text, occurred bigint, exactness text, entered bigint, entered_offset integer,
  recorded bigint, staff text, role text, source text, command_id text
) returns text language sql stable as $$
  select concat(
    octet_length(place::text), ':', place,
    octet_length(ward), ':', ward,
    octet_length(stream), ':', stream,
    octet_length(version::text), ':', version,
    octet_length(id), ':', id,
    octet_length(type), ':', type,
    octet_length(schema_version::text), ':', schema_version,
    octet_length(payload_hash), ':', payload_hash,
    octet_length(occurred::text), ':', occurred,
    octet_length(exactness), ':', exactness,
    octet_length(entered::text), ':', entered,
    octet_length(entered_offset::text), ':', entered_offset,
    octet_length(recorded::text), ':', recorded,
    octet_length(staff), ':', staff,
    octet_length(role), ':', role,
    octet_length(source), ':', source,
    octet_length(command_id), ':', command_id)
$$;

-- events come grouped by ward, wards in ascending byte order: every append takes its heads in that
-- order, so two appends over the same wards wait for each other and never in a circle.
create function footboard_append(
  c_ward text, c_id text, c_name text, c_body_hash text, c_staff text, c_role text,
  c_outcome text, c_result text, c_last_event text,
  wards text[], counts integer[],
  streams text[], versions integer[], ids text[], types text[], schema_versions integer[],
  payloads text[], payload_hashes text[], occurreds bigint[], precisions text[],
  entereds bigint[], entered_offsets integer[], staffs text[], roles text[], sources text[],
  k_subjects text[], k_wrapped bytea[], t_refs text[], t_subjects text[], t_ciphertexts bytea[]
) returns table (ward text, first_position bigint, recorded bigint) language plpgsql as $$
#variable_conflict use_column
declare
  head   record;
  body   bytea;
  link   bytea;
  links  bytea[];
  stamp  bigint;
  lo     integer := 1;
  hi     integer;
  w      text;
  before text;
begin
  -- 1. The outcome first: a concurrent twin waits here and then finds it.
  insert into command_outcome (ward, command_id, name, body_hash, author_staff, author_role,
                               outcome, result, last_event, recorded)
  values (c_ward, c_id, c_name, c_body_hash, c_staff, c_role, c_outcome, c_result, c_last_event,
          footboard_now());

  -- 2. Personal data. A key destroyed meanwhile refuses the whole append.
  if cardinality(t_refs) > 0 then
    insert into text_key (subject, wrapped_key)
    select k.subject, k.wrapped from unnest(k_subjects, k_wrapped) as k (subject, wrapped) order by 1;
    perform 1 from text_key
      where subject = any (t_subjects) order by subject for share;
    if exists (select 1 from text_key where subject = any (t_subjects) and destroyed_at is not null) then
      raise exception 'the key of a subject of this entry has been destroyed'
        using errcode = 'FB001', constraint = 'text_key_destroyed';
    end if;
    insert into text_kept (ref, subject, ciphertext)
    select * from unnest(t_refs, t_subjects, t_ciphertexts);
  end if;

  -- 3. Ward by ward: take the head, chain, insert, move the head.
  for i in 1 .. cardinality(wards) loop
    w := wards[i];
    if before is not null and w collate "C" <= before collate "C" then
      raise exception 'wards of an append come in ascending order' using errcode = 'FB003';
    end if;
    before := w;
    hi := lo + counts[i] - 1;

    select h.position, h.chain, h.recorded into head from ward_head h where h.ward = w for update;
    if not found then
      insert into ward_head (ward, position, chain, recorded)
      values (w, 0, decode(repeat('00', 32), 'hex'), 0) on conflict do nothing;
      select h.position, h.chain, h.recorded into head from ward_head h where h.ward = w for update;
    end if;
    -- Read once the head is ours, so that a long wait for it does not make an entry look older.
    stamp := greatest(head.recorded, footboard_now());

    if lo = hi then
      link := sha256(head.chain || convert_to(footboard_link_text(
        head.position + 1, w, streams[lo], versions[lo], ids[lo], types[lo], schema_versions[lo],
        payload_hashes[lo], occurreds[lo], precisions[lo], entereds[lo], entered_offsets[lo], stamp,
        staffs[lo], roles[lo], sources[lo], c_id), 'UTF8'));
      insert into event values (
        w, head.position + 1, streams[lo], versions[lo], ids[lo], types[lo], schema_versions[lo],
        payloads[lo], payload_hashes[lo], occurreds[lo], precisions[lo], entereds[lo],
        entered_offsets[lo], stamp, staffs[lo], roles[lo], sources[lo], c_id, link);
    else
      link := head.chain;
      links := '{}';
      for body in
        select convert_to(footboard_link_text(
                 head.position + e.n, w, e.stream, e.version, e.id, e.type, e.schema_version,
                 e.payload_hash, e.occurred, e.precision, e.entered, e.entered_offset, stamp,
                 e.staff, e.role, e.source, c_id), 'UTF8')
          from unnest(streams[lo:hi], versions[lo:hi], ids[lo:hi], types[lo:hi], schema_versions[lo:hi],
                      payload_hashes[lo:hi], occurreds[lo:hi], precisions[lo:hi], entereds[lo:hi],
                      entered_offsets[lo:hi], staffs[lo:hi], roles[lo:hi], sources[lo:hi])
               with ordinality as e (stream, version, id, type, schema_version, payload_hash, occurred,
                                     precision, entered, entered_offset, staff, role, source, n)
         order by e.n
      loop
        link := sha256(link || body);
        links := links || link;
      end loop;
      insert into event
      select w, head.position + e.n, e.stream, e.version, e.id, e.type, e.schema_version, e.payload,
             e.payload_hash, e.occurred, e.precision, e.entered, e.entered_offset, stamp,
             e.staff, e.role, e.source, c_id, e.link
        from unnest(streams[lo:hi], versions[lo:hi], ids[lo:hi], types[lo:hi], schema_versions[lo:hi],
                    payloads[lo:hi], payload_hashes[lo:hi], occurreds[lo:hi], precisions[lo:hi],
                    entereds[lo:hi], entered_offsets[lo:hi], staffs[lo:hi], roles[lo:hi],
                    sources[lo:hi], links)
             with ordinality as e (stream, version, id, type, schema_version, payload, payload_hash,
                                   occurred, precision, entered, entered_offset, staff, role, source,
                                   link, n);
    end if;

    update ward_head h set position = head.position + counts[i], chain = link, recorded = stamp
     where h.ward = w;
    ward := w; first_position := head.position + 1; recorded := stamp;
    return next;
    lo := hi + 1;
  end loop;
end $$;
