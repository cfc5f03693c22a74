-- Questions, their answers, and notices: one table, because they are written and shown alike.
create table talk (
  id                  uuid primary key,
  -- that of its entry once more: lists are read by kind and time from one index
  kind                text not null check (kind in ('question', 'answer', 'notice')),
  body                text not null check (body <> ''),
  -- what it is tied to: slugs, which stay known as terms are never deleted, and codes
  material            text,
  material_kind       text not null generated always as ('material') stored,
  coating             text,
  coating_kind        text not null generated always as ('coating') stored,
  source              text check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  process             text check (process in ('surface-engraving', 'deep-engraving',
    'coating-removal', 'colour-marking', 'cut', 'score')),
  machine_model       text check (machine_model <> ''),
  controller_version  text check (controller_version <> ''),
  report_id           uuid references report (id) on delete set null,
  -- of a question: the answer that helped, how many live answers there are
  accepted_id         uuid references talk (id) on delete set null,
  answers             integer not null default 0 check (answers >= 0),
  -- when it was posted, or last answered
  active_at           timestamptz not null,
  foreign key (id, kind) references entry (id, kind) on delete cascade,
  foreign key (material_kind, material) references term (kind, slug),
  foreign key (coating_kind, coating) references term (kind, slug),
  check (kind = 'question' or accepted_id is null and answers = 0),
  check (accepted_id <> id),
  check (kind <> 'answer' or num_nonnulls(material, coating, source, process, machine_model,
    controller_version, report_id) = 0)
);

-- Lists of talk stand by the date they show: when a question was asked or last answered.
create index talk_latest on talk (kind, active_at desc);
create index talk_unanswered on talk (active_at desc) where kind = 'question' and answers = 0;
create index talk_report on talk (report_id) where report_id is not null;
create index talk_accepted on talk (accepted_id) where accepted_id is not null;

-- Kept searches.
create table watch (
  id         uuid primary key,
  member_id  uuid not null references member (id),
  version    integer not null check (version > 0),
  label      text not null check (label <> ''),
  -- the canonical address of the search, without the question mark
  query      text not null,
  mail       boolean not null,
  -- 256 random bits; shown again to its owner, so it is kept as it is. Null: there is no feed
  feed_token text unique check (feed_token <> ''),
  created_at timestamptz not null,
  unique (member_id, query)
);

-- What a watch found, once each; without a watch: an answer to the member's own question.
create table watch_hit (
  id        bigint generated always as identity primary key,
  member_id uuid not null references member (id),
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
  member_id uuid primary key references member (id),
  sent_at   timestamptz not null
);
