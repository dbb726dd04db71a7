-- What the projections keep. All of it can be thrown away and built again from the events.

-- One row a ward, projection and revision. Rows, checkpoint and feed row commit together; the
-- checkpoint moves by compare-and-set on (position, feed). A retired revision accepts no commit.
create table projection (
  ward text not null,
  name text not null,
  revision integer not null,
  position bigint not null,
  feed bigint not null,
  -- Epoch milliseconds on the server's clock: the instant the stored rows were evaluated at.
  evaluated_at bigint not null,
  -- The ward's own facts and the order of its beds, as JSON.
  board text not null,
  retired_at bigint,
  primary key (ward, name, revision)
);

-- Which revision screens are served from. A rebuild writes beside it and then moves this row.
create table active_projection (
  ward text not null,
  name text not null,
  revision integer not null,
  primary key (ward, name)
);

create table board_bed (
  ward text not null,
  revision integer not null,
  bed text not null,
  -- The bed's row as JSON, exactly as the wire carries it.
  row text not null,
  primary key (ward, revision, bed)
);

-- Linked patches of the last hours, so that a screen that comes back can be told what changed.
create table ward_feed (
  ward text not null,
  feed bigint not null,
  from_feed bigint not null,
  position bigint not null,
  t bigint not null,
  changes text not null,
  primary key (ward, feed)
);

create table ward_day_total (
  ward text not null,
  revision integer not null,
  -- Start of the ward day, epoch milliseconds.
  day bigint not null,
  stay text not null,
  row text not null,
  primary key (ward, revision, day, stay)
);
create index ward_day_total_stay on ward_day_total (ward, revision, stay);
