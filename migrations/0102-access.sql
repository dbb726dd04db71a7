-- Who may come in: accounts, invitations, sessions, devices, signing windows, and who looked at what.
-- Apart from the log: these rows may change and be deleted. Nothing here is needed to fold a board.
--
-- No name, sign-in name, code, badge or token stands in clear: what must be found again is kept as a
-- keyed hash (HMAC-SHA-256 under a key made from the master key), what must be read again is sealed.
-- Instants are bigint milliseconds since 1970-01-01T00:00Z.

create table account (
  account     text    not null primary key,
  -- The author id of this person on every ward (events name it). Opaque.
  staff       text    not null unique,
  -- Keyed hash of the folded sign-in name; null for single sign-on only.
  sign_in_key text    unique,
  -- Argon2id strings.
  password    text,
  code        text,
  badge_key   text    unique,
  -- Keyed hash of issuer and subject, for single sign-on.
  outside_key text    unique,
  -- Sealed JSON: { name, signInName? }.
  profile     bytea   not null,
  -- Administrator of the whole server: may set up wards and keep accounts.
  wide        boolean not null default false,
  active      boolean not null default true,
  -- Grows with every change that must end sessions: password, wide, active, a role on a ward.
  edition     integer not null default 1,
  made        bigint  not null
);

create table invitation (
  token_hash text   not null primary key,
  account    text   not null references account (account) on delete cascade,
  ends       bigint not null,
  used       bigint
);

create table session (
  token_hash text    not null primary key,
  session    text    not null unique,
  account    text    not null references account (account) on delete cascade,
  edition    integer not null,
  began      bigint  not null,
  seen       bigint  not null,
  -- The absolute end; the idle end follows from seen.
  ends       bigint  not null,
  -- Signed out, ended by somebody, or by a change of role.
  ended      bigint
);

create table device (
  device      text   not null primary key,
  kind        text   not null,
  ward        text   not null,
  level       text   not null,
  key_hash    text   not null unique,
  place       text   not null,
  approved_by text   not null,
  approved    bigint not null,
  seen        bigint,
  page        text,
  painted     bigint,
  painted_at  bigint,
  revoked     bigint,
  revoked_by  text
);

create table pairing (
  code_hash text   not null primary key,
  poll_hash text   not null unique,
  kind      text   not null,
  ends      bigint not null,
  device    text   references device (device),
  -- Sealed device key, waiting for the screen to fetch it once.
  key_kept  bytea
);

create table signing_window (
  token_hash text   not null primary key,
  device     text   not null references device (device),
  staff      text   not null,
  ends       bigint not null
);

create table code_tries (
  staff  text    not null,
  device text    not null,
  wrong  integer not null,
  locked bigint,
  primary key (staff, device)
);

-- Reading where one's role does not reach: with a reason, for a while, reviewed afterwards.
create table glass (
  glass       text   not null primary key,
  ward        text   not null,
  staff       text   not null,
  reason      text   not null,
  words       bytea  not null,
  began       bigint not null,
  ends        bigint not null,
  reviewed    bigint,
  reviewed_by text,
  review      bytea
);

create table access_record (
  number bigint generated always as identity primary key,
  at     bigint not null,
  ward   text   not null,
  stay   text,
  staff  text,
  device text,
  what   text   not null,
  -- Sealed words of the reason, where one is asked for.
  words  bytea
);
create index access_record_stay on access_record (ward, stay, at);
create trigger access_record_is_kept before update or truncate on access_record
  for each statement execute function footboard_keep_as_it_is();
