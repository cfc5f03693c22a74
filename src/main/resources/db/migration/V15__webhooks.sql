-- Webhooks: what happens here, told to addresses that owners name.

-- What became of an entry for those who read it; null where nothing did. The change rows are the one
-- place that no writer can pass by, so a webhook is told from them.
alter table change_row
  add column move     text check (move in ('appeared', 'changed', 'gone', 'waiting')),
  -- of the entry, after the change
  add column version  integer check (version > 0);

create or replace function entry_changed() returns trigger language plpgsql as $$
declare
  was text := case when tg_op <> 'INSERT' then old.state end;
  now_is text := case when tg_op <> 'DELETE' then new.state end;
begin
  insert into change_row (entity, entity_id, version, move)
  values (coalesce(new.kind, old.kind), coalesce(new.id, old.id), new.version,
    case
      when now_is = 'live' and was is distinct from 'live' then 'appeared'
      when now_is = 'live' and new.version <> old.version then 'changed'
      when was = 'live' and now_is is distinct from 'live' then 'gone'
      when now_is = 'waiting' and was is distinct from 'waiting' then 'waiting'
    end);
  if coalesce(new.kind, old.kind) = 'photo' then
    insert into change_row (entity, entity_id)
    values ('report', coalesce(new.parent_id, old.parent_id));
  end if;
  return null;
end
$$;

-- Whatever else begins to wait at the desk. Arguments: what it is, and which column names it.
create function desk_item_waits() returns trigger language plpgsql as $$
begin
  insert into change_row (entity, entity_id, move)
  values (tg_argv[0], cast(to_jsonb(new) ->> tg_argv[1] as uuid), 'waiting');
  return null;
end
$$;
create trigger desk_flag_waits after insert or update of state on desk_flag for each row
  when (new.state = 'open') execute function desk_item_waits('flag', 'id');
create trigger desk_rule_note_waits after insert on desk_rule_note for each row
  when (new.state = 'open') execute function desk_item_waits('note', 'entry_id');
create trigger desk_caution_proposal_waits after insert on desk_caution_proposal for each row
  when (new.state = 'waiting') execute function desk_item_waits('proposal', 'id');
create trigger unfiled_waits after insert on unfiled for each row
  when (new.state = 'waiting') execute function desk_item_waits('word', 'id');
create trigger join_request_waits after insert on join_request for each row
  when (new.accepted is null) execute function desk_item_waits('request', 'member_id');

insert into change_reader (name) values ('webhooks');

create table webhook (
  id             uuid primary key,
  -- who added it
  member_id      uuid not null references member (id),
  label          text not null check (label <> ''),
  url            text not null check (url ~ '^https?://'),
  events         text[] not null check (cardinality(events) > 0
    and array_position(events, null) is null),
  -- what deliveries are signed with: whsec_ and base64
  secret         text not null check (starts_with(secret, 'whsec_')),
  -- the one before it, which signs as well for a while
  old_secret     text check (starts_with(old_secret, 'whsec_')),
  old_until      timestamptz,
  -- off: by an owner; failed: nothing arrived for days; gone: the other side said so
  state          text not null check (state in ('on', 'off', 'failed', 'gone')),
  -- since when nothing arrives
  failing_since  timestamptz,
  arrived_at     timestamptz,
  -- events that found too many others waiting
  left_out       bigint not null default 0 check (left_out >= 0),
  version        integer not null check (version > 0),
  created_at     timestamptz not null,
  updated_at     timestamptz not null,
  check ((old_secret is null) = (old_until is null))
);

-- What is to be told, written with the place the reader of change rows has reached: each change once
-- to each webhook, whichever node reads it.
create table webhook_delivery (
  number      bigint generated always as identity primary key,
  -- stays the same however often it is tried
  id          uuid not null unique,
  webhook_id  uuid not null references webhook (id) on delete cascade,
  event       text not null check (event ~ '^[a-z]+\.[a-z]+$'),
  -- the change row; null: a test
  seq         bigint,
  -- what it is about, as long as that is there
  entry_id    uuid,
  -- whether only what everybody may read is told, and so only while it can be read
  shown       boolean not null,
  -- to the letter, as it is signed
  body        text not null,
  state       text not null check (state in ('waiting', 'done', 'failed', 'dropped')),
  tries       integer not null default 0 check (tries >= 0),
  due_at      timestamptz not null,
  created_at  timestamptz not null,
  ended_at    timestamptz,
  status      integer check (status between 100 and 599),
  error       text,
  unique (webhook_id, seq),
  check ((state = 'waiting') = (ended_at is null))
);
create index webhook_delivery_due on webhook_delivery (due_at, number) where state = 'waiting';
create index webhook_delivery_waiting on webhook_delivery (webhook_id) where state = 'waiting';
create index webhook_delivery_newest on webhook_delivery (webhook_id, number desc);
create index webhook_delivery_entry on webhook_delivery (entry_id) where entry_id is not null;
create index webhook_delivery_ended on webhook_delivery (ended_at) where ended_at is not null;
