-- Entries that wait for a signature are few among very many: found by their source alone. The log's
-- reader (server/log/unsigned.ts) asks with these very conditions.
create index event_unconfirmed on event (ward, author_staff, position)
  where source like '%"unconfirmed":true%';
create index event_cosign on event (ward, position)
  where source like '%"cosign":"%';
