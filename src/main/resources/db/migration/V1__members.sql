-- Accounts, what signs them in, and what the club decided about its doors.

create table member (
  id             uuid primary key,
  number         bigint generated always as identity unique,
  handle         text not null,
  email          text,
  -- a PHC string; null: this account cannot sign in with a password
  password_hash  text,
  role           text not null check (role in ('member', 'moderator', 'owner')),
  status         text not null check (status in ('active', 'waiting', 'banned', 'erased')),
  -- how the member writes numbers: settles 1,000 on that member's own pages only
  number_style   text not null default 'any' check (number_style in ('any', 'point', 'comma')),
  locale         text,
  -- {"SPEED": "mm/min", ...}: dimension -> UCUM code; canonical where missing
  units          jsonb not null default '{}',
  created_at     timestamptz not null default now(),
  version        bigint not null default 0
);
create unique index member_handle on member (lower(handle));
create unique index member_email on member (lower(email)) where email is not null;
create index member_status on member (status, created_at) where status <> 'active';

-- A signed-in browser. The cookie holds a random secret, the table only its SHA-256.
create table session (
  id_hash     bytea primary key,
  -- what the member sees and revokes by
  id          uuid not null unique,
  member_id   uuid not null references member (id) on delete cascade,
  label       text not null,
  created_at  timestamptz not null default now(),
  last_seen   timestamptz not null default now(),
  expires_at  timestamptz not null
);
create index session_member on session (member_id);
create index session_expiry on session (expires_at);

-- A key for programs, kept as SHA-256 too.
create table api_token (
  id            uuid primary key,
  member_id     uuid not null references member (id) on delete cascade,
  hash          bytea not null unique,
  label         text not null,
  -- space-separated: read, write
  scopes        text not null,
  created_at    timestamptz not null default now(),
  expires_at    timestamptz not null,
  last_used     timestamptz,
  revoked_at    timestamptz
);
create index api_token_member on api_token (member_id);

-- Failed tries, shared by all nodes. The subject is a hash: neither names nor addresses stand here.
create table attempt (
  kind          text not null,
  subject       text not null,
  window_start  timestamptz not null,
  last_at       timestamptz not null,
  count         integer not null,
  primary key (kind, subject)
);
create index attempt_age on attempt (last_at);

-- What the club decided about itself.
create table setting (
  key    text primary key,
  value  jsonb not null
);
insert into setting (key, value) values
  ('door', '"open"'),
  ('reading', '"public"'),
  ('club-name', '"Emberwell"');

-- Answers to writes that carried a key, so that a repeat is answered and not done twice.
create table idempotency (
  member_id    uuid not null references member (id) on delete cascade,
  key          text not null,
  -- SHA-256 of method, path and body
  fingerprint  bytea not null,
  status       integer not null,
  location     text,
  etag         text,
  body         text,
  created_at   timestamptz not null default now(),
  primary key (member_id, key)
);
create index idempotency_age on idempotency (created_at);

-- Who did what, why and when. Labels are kept beside ids so that an entry stays readable.
create table audit (
  seq          bigint generated always as identity primary key,
  at           timestamptz not null default now(),
  actor_id     uuid,
  actor_label  text not null,
  action       text not null,
  entity       text not null,
  entity_id    text not null,
  reason       text not null default '',
  detail       jsonb not null default '{}'
);
create index audit_entity on audit (entity, entity_id, seq);
create index audit_actor on audit (actor_id, seq);

-- The application owns its tables, so taking away a grant would not hold it back; a trigger does.
create function audit_is_append_only() returns trigger language plpgsql as $$
begin
  raise exception 'the audit log is append-only' using errcode = 'insufficient_privilege';
end
$$;
create trigger audit_append_only before update or delete or truncate on audit
  for each statement execute function audit_is_append_only();
