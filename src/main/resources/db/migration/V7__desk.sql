-- The moderators' desk: what waits, what was flagged, what was decided, and what rules noticed.

-- a picture out of sight; it stays, so that the decision can be taken back
alter table photo add column hidden_at timestamptz;

-- Everything that can be flagged and decided, in one shape. Postgres pushes every filter down into
-- the tables, so each question to it costs index look-ups only.
create view desk_item as
  select 'report'::text as kind, r.id, r.member_id, r.state, r.created_at,
    concat_ws(', ', r.material_written, r.coating_written, r.colour_written) as title,
    null::uuid as parent_id
  from report r
  union all
  select case t.kind when 'QUESTION' then 'question' when 'ANSWER' then 'answer' else 'notice' end,
    t.id, t.member_id, t.state, t.created_at, coalesce(t.title, left(t.body, 80)), t.question_id
  from talk_entry t
  union all
  select 'photo'::text, p.id, p.member_id,
    case when p.hidden_at is null then 'LIVE' else 'REMOVED' end,
    p.created_at, 'A photo'::text, p.report_id
  from photo p;

-- Members whose entries need no first look, whatever they posted so far.
create table desk_trust (
  member_id  uuid primary key references member (id) on delete cascade,
  given_by   uuid references member (id) on delete set null,
  given_at   timestamptz not null
);

create table desk_flag (
  id          uuid primary key,
  member_id   uuid not null references member (id) on delete cascade,
  item_kind   text not null check (item_kind in ('report', 'question', 'answer', 'notice', 'photo')),
  item_id     uuid not null,
  reason      text not null,
  note        text,
  -- the role that has to settle it
  owner_role  text not null check (owner_role in ('moderator', 'owner')),
  state       text not null check (state in ('open', 'withdrawn', 'upheld', 'dismissed')),
  created_at  timestamptz not null,
  decided_by  uuid references member (id),
  decided_at  timestamptz,
  outcome     text,
  unique (member_id, item_kind, item_id)
);
create index desk_flag_open on desk_flag (created_at) where state = 'open';
create index desk_flag_item on desk_flag (item_kind, item_id) where state = 'open';
create index desk_flag_member on desk_flag (member_id, created_at desc);

-- What was decided about an item, for its author. Rows are only added.
create table desk_decision (
  number        bigint generated always as identity primary key,
  item_kind     text not null,
  item_id       uuid not null,
  author_id     uuid not null references member (id) on delete cascade,
  -- null: a rule
  moderator_id  uuid references member (id),
  rule          text,
  action        text not null check (action in ('approve', 'hold', 'remove', 'restore')),
  reason        text not null,
  at            timestamptz not null
);
create index desk_decision_item on desk_decision (item_kind, item_id, number desc);
create index desk_decision_author on desk_decision (author_id, number desc);
create index desk_decision_moderator on desk_decision (moderator_id, at);
create index desk_decision_rule on desk_decision (rule, at) where rule is not null;

-- How each rule is set. No threshold: the default of the configuration.
create table desk_rule (
  code            text primary key,
  mode            text not null check (mode in ('off', 'note', 'hold')),
  threshold       double precision,
  window_minutes  integer,
  version         integer not null default 1,
  changed_by      uuid references member (id),
  changed_at      timestamptz
);
insert into desk_rule (code, mode) values
  ('first-look', 'hold'), ('burst', 'note'), ('repeated-text', 'note'), ('newcomer-links', 'note'),
  ('far-outside', 'note');

-- What a rule noticed about an item, once.
create table desk_rule_note (
  id         bigint generated always as identity primary key,
  rule       text not null references desk_rule (code),
  item_kind  text not null,
  item_id    uuid not null,
  member_id  uuid not null references member (id) on delete cascade,
  detail     text not null,
  -- what the rule did: note or hold
  mode       text not null check (mode in ('note', 'hold')),
  state      text not null default 'open' check (state in ('open', 'seen', 'undone')),
  at         timestamptz not null,
  seen_by    uuid references member (id),
  unique (rule, item_kind, item_id)
);
create index desk_rule_note_open on desk_rule_note (id) where state = 'open';
create index desk_rule_note_rule on desk_rule_note (rule, id desc);
create index desk_rule_note_item on desk_rule_note (item_kind, item_id);

-- One row: how far the change rows were held against the rules, and when the last reminder went.
create table desk_progress (
  only_row     boolean primary key default true check (only_row),
  epoch        uuid,
  xid          bigint not null default 0,
  seq          bigint not null default 0,
  reminded_at  timestamptz
);
insert into desk_progress (only_row) values (true);

-- A caution as somebody wants it to read. It is in force only after another person accepted it.
create table desk_caution_proposal (
  id            uuid primary key,
  caution_id    text not null,
  -- version it is based on; 0: a new caution
  base_version  integer not null,
  rule          jsonb not null,
  why           text not null,
  member_id     uuid not null references member (id) on delete cascade,
  created_at    timestamptz not null,
  state         text not null check (state in ('waiting', 'accepted', 'declined', 'withdrawn')),
  decided_by    uuid references member (id),
  decided_at    timestamptz,
  outcome       text
);
create index desk_caution_waiting on desk_caution_proposal (created_at) where state = 'waiting';
create index desk_caution_member on desk_caution_proposal (member_id, created_at desc);

-- Undoing what a member or a rule did since a time.
create table desk_undo (
  id           uuid primary key,
  subject      text not null check (subject in ('member', 'rule')),
  member_id    uuid references member (id) on delete cascade,
  rule         text references desk_rule (code),
  since        timestamptz not null,
  reason       text not null,
  state        text not null check (state in ('running', 'done', 'restoring', 'restored')),
  started_by   uuid not null references member (id),
  started_at   timestamptz not null,
  restored_by  uuid references member (id),
  check ((subject = 'member') = (member_id is not null)),
  check ((subject = 'rule') = (rule is not null))
);
create index desk_undo_newest on desk_undo (started_at desc);
create index desk_undo_open on desk_undo (started_at) where state in ('running', 'restoring');

create table desk_undo_item (
  run_id       uuid not null references desk_undo (id) on delete cascade,
  position     bigint generated always as identity,
  step         text not null,
  kind         text not null,
  item_id      uuid not null,
  title        text not null,
  -- how it stood, and for texts which version stood before the first change
  was          text not null,
  back_to      integer not null,
  was_version  integer,
  done_at      timestamptz,
  restored_at  timestamptz,
  skipped      text,
  primary key (run_id, step, kind, item_id)
);
create index desk_undo_item_open on desk_undo_item (run_id, position) where done_at is null;

-- The desk looks the log up by deed and by time.
create index audit_action on audit (action, seq);
create index audit_at on audit (at, seq);
