-- Questions, their answers, and notices: one table, because they live and are moderated alike.
create table talk_entry (
  id                 uuid primary key,
  number             bigint generated always as identity unique,
  kind               text not null check (kind in ('QUESTION', 'ANSWER', 'NOTICE')),
  version            int not null,
  state              text not null,
  member_id          uuid not null references member (id),
  origin             text,
  origin_version     int,
  -- the question an answer belongs to
  question_id        uuid references talk_entry (id),
  title              text,
  body               text not null,
  -- what it is tied to; the words are slugs and codes
  material           text,
  coating            text,
  source             text,
  process            text,
  machine_model      text,
  controller_version text,
  report_id          uuid references report (id),
  -- of a question: the answer that helped, how many live answers there are, when the last came
  accepted_id        uuid references talk_entry (id),
  answers            int not null default 0,
  active_at          timestamptz not null,
  created_at         timestamptz not null,
  updated_at         timestamptz not null,
  check ((kind = 'ANSWER') = (question_id is not null)),
  check ((kind = 'ANSWER') = (title is null))
);

create index talk_newest on talk_entry (kind, number desc) where state = 'LIVE';
create index talk_unanswered on talk_entry (number desc)
  where state = 'LIVE' and kind = 'QUESTION' and answers = 0;
create index talk_answers on talk_entry (question_id, number) where question_id is not null;
create index talk_of_member on talk_entry (member_id, created_at desc);
create index talk_of_report on talk_entry (report_id) where report_id is not null;
create index talk_waiting on talk_entry (created_at) where state in ('WAITING', 'HELD');

-- Every state an entry was ever in; rows are only added.
create table talk_revision (
  entry_id  uuid not null references talk_entry (id),
  version   int not null,
  action    text not null,
  editor_id uuid references member (id),
  at        timestamptz not null,
  reason    text,
  state     text not null,
  written   jsonb not null,
  primary key (entry_id, version)
);

-- Kept searches.
create table watch (
  id         uuid primary key,
  member_id  uuid not null references member (id) on delete cascade,
  version    int not null,
  label      text not null,
  -- the canonical address of the search, without the question mark
  query      text not null,
  mail       boolean not null,
  -- 256 random bits; shown again to its owner, so it is kept as it is. Null: there is no feed
  feed_token text unique,
  created_at timestamptz not null,
  unique (member_id, query)
);

-- What a watch found, once each; without a watch: an answer to the member's own question.
create table watch_hit (
  id        bigint generated always as identity primary key,
  member_id uuid not null references member (id) on delete cascade,
  watch_id  uuid references watch (id) on delete cascade,
  entity    text not null check (entity in ('report', 'question', 'notice', 'answer')),
  entry_id  uuid not null,
  found_at  timestamptz not null,
  read_at   timestamptz,
  -- set when it went into a digest, or when no digest wanted it
  mailed_at timestamptz
);

create unique index watch_hit_once on watch_hit (member_id, entry_id, watch_id)
  nulls not distinct;
create index watch_hit_inbox on watch_hit (member_id, id desc);
create index watch_hit_unread on watch_hit (member_id, id desc) where read_at is null;
create index watch_hit_feed on watch_hit (watch_id, id desc);
create index watch_hit_mail on watch_hit (watch_id) where mailed_at is null;
create index watch_hit_age on watch_hit (found_at);

-- One row each: how far the change rows were held against the watches, and when digests went out.
create table watch_progress (
  only_row  boolean primary key default true check (only_row),
  epoch     uuid,
  xid       bigint not null default 0,
  seq       bigint not null default 0
);

insert into watch_progress (only_row) values (true);

create table watch_digest (
  member_id uuid primary key references member (id) on delete cascade,
  sent_at   timestamptz not null
);
