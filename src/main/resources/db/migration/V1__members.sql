-- Accounts, what signs them in, and what the club decided about itself.

-- Rows are never deleted: whoever leaves becomes 'erased', without a name and unable to sign in.
create table member (
  id             uuid primary key,
  number         bigint generated always as identity unique,
  handle         text not null check (handle <> ''),
  email          text check (email <> ''),
  -- null: the address was never proved by a letter that arrived
  email_confirmed_at  timestamptz,
  -- a PHC string; null: this account cannot sign in with a password
  password_hash  text,
  role           text not null check (role in ('member', 'moderator', 'owner')),
  status         text not null check (status in ('active', 'waiting', 'banned', 'erased')),
  -- how the member writes numbers: settles 1,000 on that member's own pages only
  number_style   text not null default 'any' check (number_style in ('any', 'point', 'comma')),
  -- {"speed": "mm/min", ...}: kind of quantity -> UCUM code; canonical where missing
  units          jsonb not null default '{}' check (jsonb_typeof(units) = 'object'),
  created_at     timestamptz not null default now(),
  version        bigint not null default 0,
  check (email is not null or email_confirmed_at is null),
  check (status <> 'erased' or (handle = 'former member' and email is null
    and password_hash is null and role = 'member' and number_style = 'any' and units = '{}'))
);
create unique index member_handle on member (lower(handle)) where status <> 'erased';
create unique index member_email on member (lower(email)) where email is not null;
create index member_status on member (status, created_at) where status <> 'active';
create index member_owner on member (role) where role = 'owner';

-- A signed-in browser. The cookie holds a random secret, the table only its SHA-256.
create table session (
  id_hash     bytea primary key,
  -- what the member sees and revokes by
  id          uuid not null unique,
  member_id   uuid not null references member (id),
  label       text not null check (label <> ''),
  created_at  timestamptz not null default now(),
  last_seen   timestamptz not null default now(),
  expires_at  timestamptz not null
);
create index session_member on session (member_id);
create index session_expiry on session (expires_at);

-- A key for programs, kept as SHA-256 too.
create table api_token (
  id            uuid primary key,
  member_id     uuid not null references member (id),
  hash          bytea not null unique,
  label         text not null check (label <> ''),
  -- in this order, with a space between
  scopes        text not null check (scopes in ('read', 'write', 'moderate', 'read write',
    'read moderate', 'write moderate', 'read write moderate')),
  created_at    timestamptz not null default now(),
  expires_at    timestamptz not null,
  last_used     timestamptz,
  revoked_at    timestamptz
);
create index api_token_member on api_token (member_id);

-- Failed tries, shared by all nodes. The subject is a hash: neither names nor addresses stand here.
create table attempt (
  kind          text not null check (kind ~ '^[a-z-]+$'),
  subject       text not null,
  last_at       timestamptz not null,
  count         integer not null check (count >= 0),
  primary key (kind, subject)
);
create index attempt_age on attempt (last_at);

-- What the club decided about itself. How its door stands is decided at its first start.
create table club_option (
  key    text primary key check (key in ('door', 'reading', 'club-name', 'local-sign-in', 'licence',
    'notes', 'club-version', 'form-key')),
  value  text not null,
  check (key <> 'door' or value in ('open', 'request', 'invitation')),
  check (key <> 'reading' or value in ('public', 'members')),
  check (key <> 'local-sign-in' or value in ('on', 'off')),
  check (key <> 'club-version' or value ~ '^[0-9]+$')
);
insert into club_option (key, value) values
  ('club-name', 'Emberwell'),
  ('local-sign-in', 'on'),
  ('licence', 'Measurements are shared as facts under CC0 1.0; texts and photos stay their authors'' own and are shown under CC BY 4.0.'),
  ('notes', ''),
  ('club-version', '1');

-- Answers to writes that carried a key, so that a repeat is answered and not done twice.
create table idempotency (
  member_id    uuid not null references member (id),
  key          text not null check (key <> ''),
  -- SHA-256 of method, path and body
  fingerprint  bytea not null,
  status       integer not null check (status between 100 and 599),
  location     text,
  etag         text,
  body         text,
  created_at   timestamptz not null default now(),
  primary key (member_id, key)
);
create index idempotency_age on idempotency (created_at);
