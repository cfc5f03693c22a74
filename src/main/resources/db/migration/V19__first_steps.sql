-- First steps: the invented club that an owner may load as an example, and what people ticked off.

-- The example, while it is here or on its way. One row: a club has one or none.
create table example_club (
  only_row   boolean primary key default true check (only_row),
  -- one loading; ids of what it brings are made from it, so that it can come again after it went
  run        uuid not null,
  state      text not null check (state in ('loading', 'there', 'removing')),
  -- entries so far, of how many
  done       integer not null check (done >= 0),
  total      integer not null check (total >= done),
  -- who wished it
  member_id  uuid not null references member (id),
  asked_at   timestamptz not null,
  -- the node that works at it has it until then
  leased_until  timestamptz not null
);

-- Whom no person stands behind. They cannot sign in.
create table invented_member (
  member_id  uuid primary key references member (id)
);

-- What somebody did or put away that no other table tells.
create table first_step (
  member_id  uuid not null references member (id),
  step       text not null check (step in ('units', 'range', 'put-away', 'owner-rules',
    'owner-example', 'owner-put-away')),
  at         timestamptz not null default now(),
  primary key (member_id, step)
);

-- Every page says so while the example is here.
alter table club_option drop constraint club_option_key_check;
alter table club_option add constraint club_option_key_check check (key in ('door', 'reading',
  'club-name', 'local-sign-in', 'licence', 'notes', 'club-version', 'form-key', 'data-licence',
  'photo-megabytes', 'example'));
alter table club_option add check (key <> 'example' or value in ('on', 'off'));
insert into club_option (key, value) values ('example', 'off');
