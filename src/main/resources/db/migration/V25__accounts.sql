-- When somebody last proved in this browser who they are; a session begins with such a proof.
alter table session add column confirmed_at timestamptz not null default now();
update session set confirmed_at = created_at;

-- The browser gets another secret with its next page, since its member may do other things now.
alter table session add column renew boolean not null default false;

-- It got one: good for a moment more, for pages that were asked for at the same time.
alter table session add column replaced boolean not null default false;

-- As every other secret: only what it hashes to. Who is on the way comes again.
delete from sso_arrival;
alter table sso_arrival drop column invitation;
alter table sso_arrival add column invitation_hash bytea;

-- A name as it looks: of two that look alike only one is given. Of the rows of confusables.txt
-- (Unicode technical standard 39) those between letters that names can have; case does not count,
-- and I, i and l stand for one another by the capital of i.
create function looks_like(name text) returns text immutable strict parallel safe
  return replace(translate(lower(name), 'i10_', 'llo-'), 'm', 'rn');
alter table member add column looks text generated always as (looks_like(handle)) stored;
create index member_looks on member (looks) where status <> 'erased';

-- Who came in, was kept out, or left: for the member to see, and for a while only.
create table sign_in (
  id         bigint generated always as identity primary key,
  at         timestamptz not null default now(),
  member_id  uuid not null references member (id),
  event      text not null check (event in ('signed-in', 'wrong-password', 'signed-out',
    'password-changed', 'token-elsewhere')),
  -- 24 bits of an IPv4 address, 64 of an IPv6 one
  network    text not null,
  -- the browser in words, or what the token is for
  label      text not null
);
create index sign_in_member on sign_in (member_id, id);
create index sign_in_age on sign_in (at);

-- From where a token was used before.
create table token_network (
  token_id  uuid not null references api_token (id) on delete cascade,
  network   text not null,
  primary key (token_id, network)
);
alter table api_token add column last_network text;
