-- Questions, their answers, and notices: one table, because they are written and shown alike.
create table talk (
  id                  uuid primary key,
  kind                text not null check (kind in ('question', 'answer', 'notice')),
  title               text,
  body                text not null,
  -- what it is tied to; the words are slugs and codes
  material            text,
  coating             text,
  source              text,
  process             text,
  machine_model       text,
  controller_version  text,
  report_id           uuid references report (id) on delete set null,
  -- of a question: the answer that helped, how many live answers there are, when the last came
  accepted_id         uuid references talk (id) on delete set null,
  answers             int not null default 0,
  active_at           timestamptz not null,
  foreign key (id, kind) references entry (id, kind) on delete cascade,
  check ((kind = 'answer') = (title is null)),
  check (kind = 'question' or accepted_id is null and answers = 0),
  check (kind <> 'answer' or num_nonnulls(material, coating, source, process, machine_model,
    controller_version, report_id) = 0)
);

-- Lists of talk stand by the date they show: when a question was asked or last answered.
create index talk_latest on talk (kind, active_at desc);
create index talk_unanswered on talk (active_at desc) where kind = 'question' and answers = 0;
create index talk_of_report on talk (report_id) where report_id is not null;
create index talk_accepted on talk (accepted_id) where accepted_id is not null;

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
  entry_id  uuid not null references entry (id) on delete cascade,
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
create index watch_hit_entry on watch_hit (entry_id);

-- When a member last got a digest.
create table watch_digest (
  member_id uuid primary key references member (id) on delete cascade,
  sent_at   timestamptz not null
);
