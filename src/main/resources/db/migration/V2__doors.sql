-- How people come in, and what leaves by mail.

-- A link that lets people in without asking. The link holds a random secret, the table its SHA-256.
create table invitation (
  id          uuid primary key,
  code_hash   bytea not null unique,
  member_id   uuid not null references member (id),
  note        text not null default '',
  most        integer not null check (most > 0),
  used        integer not null default 0 check (used between 0 and most),
  created_at  timestamptz not null,
  expires_at  timestamptz not null,
  revoked_at  timestamptz
);
create index invitation_member on invitation (member_id);
create index invitation_age on invitation (created_at desc);

-- Somebody who asked to come in. The account waits with status 'waiting'.
create table join_request (
  member_id   uuid primary key references member (id),
  text        text not null check (text <> ''),
  asked_at    timestamptz not null,
  decided_at  timestamptz,
  accepted    boolean,
  reason      text not null default '',
  check ((decided_at is null) = (accepted is null))
);
create index join_request_waiting on join_request (asked_at) where decided_at is null;

-- The code that makes the first owner: one, as SHA-256, until there is an owner.
create table owner_code (
  only_row    boolean primary key default true check (only_row),
  code_hash   bytea not null,
  expires_at  timestamptz not null
);

-- A link sent once: proves an address or sets a password. SHA-256 of its secret.
create table once_link (
  secret_hash  bytea primary key,
  kind         text not null check (kind in ('confirm', 'reset')),
  member_id    uuid not null references member (id),
  -- the address a 'confirm' proves
  email        text,
  created_at   timestamptz not null,
  expires_at   timestamptz not null,
  check (kind = 'reset' or email is not null)
);
create index once_link_member on once_link (member_id, kind);
create index once_link_expiry on once_link (expires_at);

-- Letters on their way. Rows are written with the deed they tell of and go once they are sent.
create table mail_outbox (
  id          bigint generated always as identity primary key,
  member_id   uuid not null references member (id),
  recipient   text not null,
  kind        text not null check (kind ~ '^[a-z-]+$'),
  subject     text not null,
  body        text not null,
  -- when the next try is due
  due_at      timestamptz not null,
  tries       integer not null default 0 check (tries >= 0),
  last_error  text,
  -- given up after the last try
  failed_at   timestamptz
);
create index mail_outbox_due on mail_outbox (due_at) where failed_at is null;
create index mail_outbox_member on mail_outbox (member_id);

-- Who a member is at the sign-in provider.
create table identity_link (
  issuer      text not null,
  subject     text not null,
  member_id   uuid not null references member (id),
  primary key (issuer, subject)
);
create index identity_link_member on identity_link (member_id);

-- Somebody the provider knows and the club does not yet: waits for a name, in SHA-256 of a cookie.
create table sso_arrival (
  secret_hash  bytea primary key,
  issuer       text not null,
  subject      text not null,
  email        text,
  suggestion   text not null,
  -- an invitation that was followed before
  invitation   text,
  expires_at   timestamptz not null
);
create index sso_arrival_expiry on sso_arrival (expires_at);

-- Answers of the provider that were already used, until they would be too old anyway.
create table sso_state (
  state_hash  bytea primary key,
  expires_at  timestamptz not null
);
