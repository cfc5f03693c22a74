-- What members write and others may see: one life for every kind. What a kind has of its own stands
-- in a table of that kind, with the same id.
create table entry (
  id              uuid primary key,
  number          bigint generated always as identity unique,
  kind            text not null check (kind in ('report', 'question', 'answer', 'notice', 'photo')),
  member_id       uuid not null references member (id),
  state           text not null check (state in ('live', 'waiting', 'held', 'removed', 'withdrawn')),
  version         integer not null check (version > 0),
  -- what it belongs to: the question of an answer, the report of a photo
  parent_id       uuid references entry (id),
  -- what lists call it
  title           text not null,
  -- where it was made: null = here, else the other club's address and its version of it
  origin          text check (origin <> ''),
  origin_version  integer check (origin_version > 0),
  created_at      timestamptz not null,
  updated_at      timestamptz not null,
  unique (id, kind),
  check ((kind in ('answer', 'photo')) = (parent_id is not null)),
  check (parent_id <> id),
  check ((origin is null) = (origin_version is null))
);

create index entry_member on entry (member_id, created_at desc);
create index entry_live on entry (kind, number) where state = 'live';
create index entry_below on entry (parent_id, created_at, number) where parent_id is not null;
create index entry_waiting on entry (created_at) where state = 'waiting';

-- Every state an entry was ever in; rows are only added. What a moderator or a rule decided is such a
-- row and nothing else.
create table entry_revision (
  entry_id     uuid not null references entry (id),
  version      integer not null check (version > 0),
  -- its place in the log, among the deeds that have no history of their own
  seq          bigint not null unique default nextval('deed'),
  action       text not null check (action in ('posted', 'edited', 'accepted', 'withdrawn', 'held',
    'removed', 'approved', 'restored', 'photo-added', 'photo-removed', 'read-again')),
  -- who did it; neither: the server itself
  member_id    uuid references member (id),
  rule         text references desk_rule (code),
  at           timestamptz not null,
  reason       text,
  state        text not null check (state in ('live', 'waiting', 'held', 'removed', 'withdrawn')),
  -- null: the words of the version before
  written      jsonb check (jsonb_typeof(written) = 'object'),
  interpreted  jsonb check (jsonb_typeof(interpreted) = 'object'),
  primary key (entry_id, version),
  check (member_id is null or rule is null),
  check (written is not null or version > 1)
);

create index entry_revision_deed on entry_revision (seq)
  where action in ('held', 'removed', 'approved', 'restored');
create index entry_revision_member on entry_revision (member_id, at)
  where action in ('edited', 'held', 'removed', 'approved', 'restored');
create index entry_revision_rule on entry_revision (rule, at) where rule is not null;

-- Entries are a member's: their history can leave with them, or lose its texts.
create trigger entry_revision_kept before truncate on entry_revision
  for each statement execute function history_is_append_only();
create trigger entry_revision_left before delete on entry_revision
  for each statement execute function history_leaves_with_its_owner();
create trigger entry_revision_names before update on entry_revision
  for each row execute function history_is_append_only('reason', 'written', 'interpreted');

-- The log: what has no history of its own, what moderators and rules decided about entries, and what
-- moderators did to the catalog. Each part is one table and nothing joined to it, so that the newest
-- lines are read from all ends.
create view audit_line as
  select a.seq, a.at, a.member_id,
    coalesce((select m.handle from member m where m.id = a.member_id), 'rule ' || a.rule,
      'the operator') as who,
    a.action, a.entity, a.entity_id, a.reason, a.detail
  from audit a
  union all
  select v.seq, v.at, v.member_id,
    coalesce((select m.handle from member m where m.id = v.member_id), 'rule ' || v.rule),
    case when (select e.kind from entry e where e.id = v.entry_id) <> 'photo'
      then case v.action when 'approved' then 'restored' else v.action end
      when v.action in ('held', 'removed') then 'hide' else 'show' end,
    (select e.kind from entry e where e.id = v.entry_id), cast(v.entry_id as text),
    coalesce(v.reason, ''), jsonb '{}'
  from entry_revision v
  where v.action in ('held', 'removed', 'approved', 'restored')
    and (v.member_id is not null or v.rule is not null)
  union all
  select r.seq, r.at, r.member_id, (select m.handle from member m where m.id = r.member_id),
    r.action, r.subject, r.subject_id, r.why, r.detail
  from catalog_revision r
  where r.action is not null;

-- An entry can leave with its author; that somebody decided about it stays in the log.
create function deeds_stay_in_the_log() returns trigger language plpgsql as $$
begin
  insert into audit (seq, at, member_id, rule, action, entity, entity_id, reason, detail)
  select seq, at, member_id, old.rule, action, entity, entity_id, reason, detail
  from audit_line where seq = old.seq;
  return old;
end
$$;
create trigger entry_revision_deeds before delete on entry_revision for each row
  when (old.action in ('held', 'removed', 'approved', 'restored'))
  execute function deeds_stay_in_the_log();

-- What changed, for every node's index: kinds and ids of entries only. xid and seq give the order in
-- which a reader that stays below pg_snapshot_xmin misses nothing.
create table change_row (
  seq        bigint generated always as identity primary key,
  xid        xid8 not null default pg_current_xact_id(),
  entity     text not null,
  entity_id  uuid not null,
  at         timestamptz not null default now()
);

create index change_row_order on change_row (xid, seq);

-- Nobody else writes change rows, and nobody can forget to.
create function entry_changed() returns trigger language plpgsql as $$
begin
  insert into change_row (entity, entity_id)
  values (coalesce(new.kind, old.kind), coalesce(new.id, old.id));
  return null;
end
$$;
create trigger entry_changed after insert or update or delete on entry
  for each row execute function entry_changed();

-- How far each reader in the database has followed the change rows; one node at a time moves it.
create table change_reader (
  name   text primary key,
  epoch  uuid,
  xid    bigint not null default 0,
  seq    bigint not null default 0
);

insert into change_reader (name) values ('watches'), ('rules');

-- One row: the id of this database's history and how far its change rows were trimmed.
create table history_epoch (
  only_row     boolean primary key default true check (only_row),
  epoch        uuid not null,
  trimmed_xid  bigint not null default 0,
  trimmed_seq  bigint not null default 0
);

insert into history_epoch (epoch) values (gen_random_uuid());
