-- The moderators' desk: what waits, what was flagged, what was decided, and what rules noticed.

-- Who settled, decided or set something stands in the log, with when and why.

-- Members whose entries need no first look, whatever they posted so far.
create table desk_trust (
  member_id  uuid primary key references member (id)
);

create table desk_flag (
  id          uuid primary key,
  member_id   uuid not null references member (id),
  entry_id    uuid not null references entry (id) on delete cascade,
  reason      text not null check (reason in ('unsafe-advice', 'wrong-numbers', 'spam',
    'off-topic', 'personal-data', 'rights')),
  note        text,
  state       text not null check (state in ('open', 'withdrawn', 'upheld', 'dismissed')),
  created_at  timestamptz not null,
  decided_at  timestamptz,
  outcome     text,
  unique (member_id, entry_id),
  check ((state in ('upheld', 'dismissed')) = (decided_at is not null)),
  check ((decided_at is null) = (outcome is null))
);
create index desk_flag_open on desk_flag (created_at) where state = 'open';
create index desk_flag_entry on desk_flag (entry_id);
create index desk_flag_member on desk_flag (member_id, created_at desc);

-- What a rule noticed about an item, once.
create table desk_rule_note (
  id         bigint generated always as identity primary key,
  rule       text not null references desk_rule (code),
  entry_id   uuid not null references entry (id) on delete cascade,
  detail     text not null,
  -- what the rule did: note or hold
  mode       text not null check (mode in ('note', 'hold')),
  state      text not null default 'open' check (state in ('open', 'seen', 'undone')),
  at         timestamptz not null,
  seen_by    uuid references member (id),
  unique (rule, entry_id),
  check ((state = 'seen') = (seen_by is not null))
);
create index desk_rule_note_open on desk_rule_note (id) where state = 'open';
create index desk_rule_note_rule on desk_rule_note (rule, id desc);
create index desk_rule_note_entry on desk_rule_note (entry_id);

-- One row: when the last reminder went.
create table desk_progress (
  only_row     boolean primary key default true check (only_row),
  reminded_at  timestamptz
);
insert into desk_progress (only_row) values (true);

-- A caution as somebody wants it to read. It is in force only after another person accepted it.
create table desk_caution_proposal (
  id            uuid primary key,
  caution_id    text not null,
  -- version it is based on; 0: a new caution
  base_version  integer not null check (base_version >= 0),
  rule          jsonb not null check (rule ->> 'id' = caution_id),
  why           text not null,
  member_id     uuid not null references member (id),
  created_at    timestamptz not null,
  state         text not null check (state in ('waiting', 'accepted', 'declined', 'withdrawn')),
  decided_at    timestamptz,
  outcome       text,
  check (state <> 'waiting' or decided_at is null),
  check (state not in ('accepted', 'declined') or num_nulls(decided_at, outcome) = 0)
);
create index desk_caution_proposal_waiting on desk_caution_proposal (created_at) where state = 'waiting';
create index desk_caution_proposal_member on desk_caution_proposal (member_id, created_at desc);

-- Undoing what a member or a rule did since a time.
create table desk_undo (
  id           uuid primary key,
  member_id    uuid references member (id),
  rule         text references desk_rule (code),
  since        timestamptz not null,
  reason       text not null,
  state        text not null check (state in ('running', 'done', 'restoring', 'restored')),
  started_by   uuid not null references member (id),
  started_at   timestamptz not null,
  restored_by  uuid references member (id),
  -- whose deeds: a member's or a rule's
  check ((member_id is null) <> (rule is null)),
  check (state not in ('restoring', 'restored') or restored_by is not null)
);
create index desk_undo_newest on desk_undo (started_at desc);
create index desk_undo_open on desk_undo (started_at) where state in ('running', 'restoring');

create table desk_undo_item (
  run_id       uuid not null references desk_undo (id) on delete cascade,
  position     bigint generated always as identity,
  step         text not null check (step in ('remove', 'revert', 'release', 'hold', 'flag',
    'proposal', 'unban', 'note')),
  kind         text not null check (kind in ('report', 'question', 'answer', 'notice', 'photo',
    'flag', 'caution', 'member')),
  item_id      uuid not null,
  -- set where it is about an entry; other steps are about a flag, a proposal or a member
  entry_id     uuid references entry (id) on delete cascade generated always as (
    case when kind not in ('flag', 'caution', 'member') then item_id end) stored,
  -- how it stood, and for texts which version stood before the first change
  was          text not null,
  back_to      integer not null,
  was_version  integer,
  done_at      timestamptz,
  restored_at  timestamptz,
  skipped      text,
  check (restored_at is null or done_at is not null),
  check (skipped is null or done_at is not null),
  primary key (run_id, step, kind, item_id)
);
create index desk_undo_item_entry on desk_undo_item (entry_id) where entry_id is not null;
create index desk_undo_item_open on desk_undo_item (run_id, position) where done_at is null;
