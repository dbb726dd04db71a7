-- Which paper sheets were printed, from what, and who lay where: apart from the log, no name and no text.
-- Positions and feed numbers are those of the ward when the sheet was made; instants are epoch milliseconds.
create table paper_sheet (
  serial      text   not null primary key,
  ward        text   not null,
  made        bigint not null,
  position    bigint not null,
  feed        bigint not null,
  t           bigint not null,
  valid_until bigint not null,
  -- Whose hand asked for it; null for the hourly one.
  made_by     text,
  -- JSON: [{ bed, label, stay }], stay null for an empty bed.
  beds        text   not null
);
create index paper_sheet_ward on paper_sheet (ward, made);
