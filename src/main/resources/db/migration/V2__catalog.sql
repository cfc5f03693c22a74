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
  slug         text not null,
  label        text not null,
  parent       text,
  note         text,
  hex          text,
  deprecated   boolean not null default false,
  -- slug of the term that stands for this one since a merge
  replaced_by  text,
  origin       text not null check (origin in ('shared', 'club')),
  -- a moderator changed it: the data files leave it alone from then on
  edited       boolean not null default false,
  -- what the data file said when it was last read
  file_hash    text,
  version      integer not null default 1,
  unique (kind, slug),
  check (replaced_by is distinct from slug),
  check (parent is distinct from slug),
  foreign key (kind, parent) references term (kind, slug) deferrable initially deferred,
  foreign key (kind, replaced_by) references term (kind, slug) deferrable initially deferred
);

create table synonym (
  id       uuid primary key,
  term_id  text not null references term (id),
  text     text not null,
  origin   text not null check (origin in ('shared', 'club')),
  -- no spelling any more, by a moderator (edited) or because the data file dropped it
  removed  boolean not null default false,
  edited   boolean not null default false,
  version  integer not null default 1,
  unique (term_id, text)
);

create table caution (
  id                text primary key,
  rule              jsonb not null,
  origin            text not null check (origin in ('shared', 'club')),
  edited            boolean not null default false,
  file_hash         text,
  -- removed only after a second moderator confirmed
  removed           boolean not null default false,
  removal_asked_by  text,
  removal_asked_at  timestamptz,
  removal_reason    text,
  version           integer not null default 1,
  check ((removal_asked_by is null) = (removal_asked_at is null))
);

create table catalog_merge (
  id         uuid primary key,
  kind       text not null,
  loser      text not null,
  winner     text not null,
  -- what the loser was before, so that an undo restores exactly that
  mapping    jsonb not null,
  merged_by  text not null,
  why        text not null,
  merged_at  timestamptz not null,
  undone_by  text,
  undone_at  timestamptz,
  foreign key (kind, loser) references term (kind, slug),
  foreign key (kind, winner) references term (kind, slug),
  check ((undone_by is null) = (undone_at is null))
);
create unique index catalog_merge_standing on catalog_merge (kind, loser) where undone_at is null;

-- Texts that matched nothing or several things, one row per folded text.
create table unfiled (
  id          uuid primary key,
  kind        text not null check (kind in ('material', 'coating', 'colour', 'defect')),
  -- as first written
  written     text not null,
  folded      text not null,
  count       integer not null default 1,
  first_seen  timestamptz not null default now(),
  last_seen   timestamptz not null default now(),
  state       text not null default 'waiting' check (state in ('waiting', 'filed', 'dismissed')),
  filed_to    text,
  decided_by  text,
  decided_at  timestamptz,
  version     integer not null default 1,
  unique (kind, folded)
);
create index unfiled_waiting on unfiled (count desc, first_seen) where state = 'waiting';

create table catalog_revision (
  seq         bigint generated always as identity primary key,
  subject     text not null check (subject in ('term', 'caution', 'merge', 'unfiled')),
  subject_id  text not null,
  version     integer not null,
  before      jsonb,
  after       jsonb,
  who         text not null,
  why         text not null,
  at          timestamptz not null default now()
);
create index catalog_revision_subject on catalog_revision (subject, subject_id, seq);
