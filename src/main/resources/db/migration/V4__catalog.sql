-- The club's words and cautions. Rows come from the shared data files and from moderators; none is
-- ever deleted, because reports and other clubs point to them.

-- One row: its number rises with every change, so that each node sees cheaply when to read again.
-- Whoever changes the catalog locks it first, so changes come one after another.
create table catalog_state (
  only_row  boolean primary key default true check (only_row),
  version   bigint not null
);
insert into catalog_state (version) values (0);

create table term (
  -- kind:slug
  id           text primary key,
  kind         text not null check (kind in ('material', 'coating', 'colour', 'defect')),
  slug         text not null check (slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
  label        text not null check (label <> ''),
  parent       text,
  note         text,
  -- colours only
  hex          text check (hex ~* '^#[0-9a-f]{6}$'),
  deprecated   boolean not null default false,
  -- slug of the term that stands for this one since a merge
  replaced_by  text,
  origin       text not null check (origin in ('shared', 'club')),
  -- a moderator changed it: the data files leave it alone from then on
  edited       boolean not null default false,
  -- what the data file said when it was last read
  file_hash    text,
  version      integer not null default 1 check (version > 0),
  unique (kind, slug),
  check (id = kind || ':' || slug),
  check (hex is null or kind = 'colour'),
  check (replaced_by is null or deprecated),
  check (replaced_by is distinct from slug),
  check (parent is distinct from slug),
  foreign key (kind, parent) references term (kind, slug) deferrable initially deferred,
  foreign key (kind, replaced_by) references term (kind, slug) deferrable initially deferred
);

create table synonym (
  id       uuid primary key,
  term_id  text not null references term (id),
  text     text not null check (text <> ''),
  origin   text not null check (origin in ('shared', 'club')),
  -- no spelling any more, by a moderator (edited) or because the data file dropped it
  removed  boolean not null default false,
  edited   boolean not null default false,
  version  integer not null default 1 check (version > 0),
  unique (term_id, text)
);

create table caution (
  id                text primary key check (id ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
  rule              jsonb not null check (rule ->> 'id' = id),
  origin            text not null check (origin in ('shared', 'club')),
  edited            boolean not null default false,
  file_hash         text,
  -- removed only after a second moderator confirmed
  removed           boolean not null default false,
  removal_asked_by  uuid references member (id),
  removal_asked_at  timestamptz,
  removal_reason    text,
  version           integer not null default 1 check (version > 0),
  check (num_nulls(removal_asked_by, removal_asked_at, removal_reason) in (0, 3)),
  check (not removed or removal_asked_by is not null)
);

-- Who merged, who took it back, and why stands in the history of the term.
create table catalog_merge (
  id         uuid primary key,
  kind       text not null,
  loser      text not null,
  winner     text not null,
  -- what the loser was before, so that an undo restores exactly that
  mapping    jsonb not null,
  undone_at  timestamptz,
  foreign key (kind, loser) references term (kind, slug),
  foreign key (kind, winner) references term (kind, slug),
  check (loser <> winner)
);
create unique index catalog_merge_standing on catalog_merge (kind, loser) where undone_at is null;

-- Texts that matched nothing or several things, one row per folded text.
create table unfiled (
  id          uuid primary key,
  kind        text not null check (kind in ('material', 'coating', 'colour', 'defect')),
  -- as first written
  written     text not null,
  folded      text not null,
  count       integer not null default 1 check (count > 0),
  first_seen  timestamptz not null default now(),
  last_seen   timestamptz not null default now(),
  state       text not null default 'waiting' check (state in ('waiting', 'filed', 'dismissed')),
  -- slug of the term
  filed_to    text,
  version     integer not null default 1 check (version > 0),
  unique (kind, folded),
  foreign key (kind, filed_to) references term (kind, slug),
  check ((state = 'filed') = (filed_to is not null))
);
create index unfiled_waiting on unfiled (count desc, first_seen) where state = 'waiting';

create table catalog_revision (
  -- its place in the log, among all deeds
  seq         bigint primary key default nextval('deed'),
  subject     text not null check (subject in ('term', 'caution', 'unfiled')),
  subject_id  text not null,
  version     integer not null check (version > 0),
  before      jsonb,
  after       jsonb,
  -- null: the data files
  member_id   uuid references member (id),
  why         text not null,
  -- what the log calls it and says besides; null: the data files did it, or it is part of a deed that
  -- has a line of its own
  action      text check (action ~ '^[a-z-]+$'),
  detail      jsonb not null default '{}' check (jsonb_typeof(detail) = 'object'),
  at          timestamptz not null default now(),
  check (action is null or member_id is not null)
);
create index catalog_revision_subject on catalog_revision (subject, subject_id, seq);
create index catalog_revision_deed on catalog_revision (seq) where action is not null;
create index catalog_revision_member on catalog_revision (member_id, at) where member_id is not null;

-- Vocabulary and cautions are the club's own: their history loses texts and nothing else.
create trigger catalog_revision_kept before delete or truncate on catalog_revision
  for each statement execute function history_is_append_only();
create trigger catalog_revision_names before update on catalog_revision
  for each row execute function history_is_append_only('why', 'before', 'after', 'detail');
