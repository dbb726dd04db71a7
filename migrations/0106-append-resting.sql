-- An append that rests on streams it does not write: they must still be at the versions they were
-- read at, so that two decisions of one instant cannot both count on what the other is changing.
-- The ward's head is taken first, so that nothing is added between the look and the append.
create function footboard_append_resting(
  c_ward text, c_id text, c_name text, c_body_hash text, c_staff text, c_role text,
  c_outcome text, c_result text, c_last_event text,
  wards text[], counts integer[],
  streams text[], versions integer[], ids text[], types text[], schema_versions integer[],
  payloads text[], payload_hashes text[], occurreds bigint[], precisions text[],
  entereds bigint[], entered_offsets integer[], staffs text[], roles text[], sources text[],
  k_subjects text[], k_wrapped bytea[], t_refs text[], t_subjects text[], t_ciphertexts bytea[],
  r_streams text[], r_versions integer[]
) returns table (ward text, first_position bigint, recorded bigint) language plpgsql as $$
#variable_conflict use_column
begin
  perform 1 from ward_head h where h.ward = c_ward for update;
  if exists (
    select 1 from unnest(r_streams, r_versions) as r (stream, version)
     where r.version <> coalesce(
       (select max(e.version) from event e where e.ward = c_ward and e.stream = r.stream), 0)
  ) then
    raise exception 'a stream that the decision rests on has gone on' using errcode = 'FB004';
  end if;
  return query select * from footboard_append(
    c_ward, c_id, c_name, c_body_hash, c_staff, c_role, c_outcome, c_result, c_last_event,
    wards, counts, streams, versions, ids, types, schema_versions, payloads, payload_hashes,
    occurreds, precisions, entereds, entered_offsets, staffs, roles, sources,
    k_subjects, k_wrapped, t_refs, t_subjects, t_ciphertexts);
end $$;
