-- Backups: one that is being made, those that lie on the disk of some node, and those that came to
-- nothing. The files are what counts: each node looks which of them it has.
create table backup (
  id          uuid primary key,
  cause       text not null check (cause in ('schedule', 'by-hand', 'before-upgrade')),
  state       text not null check (state in ('running', 'kept', 'failed', 'died')),
  -- on which machine
  node        text not null,
  started_at  timestamptz not null,
  ended_at    timestamptz,
  -- whoever makes it says every while that it still does; after this time it has died
  until       timestamptz,
  -- in one sentence, why there is none
  failure     text,
  -- the file: its name tells it apart from all others
  name        text unique,
  path        text,
  size_bytes  bigint check (size_bytes > 0),
  made_at     timestamptz,
  program     text,
  tables      int,
  -- when its node last saw it lie there
  seen_at     timestamptz,
  -- whether it could be brought back when that was tried last
  trial       text check (trial in ('running', 'good', 'damaged', 'failed')),
  tried_at    timestamptz,
  trial_until timestamptz,
  trial_says  text,
  check ((state = 'running') = (until is not null)),
  check ((state = 'running') = (ended_at is null)),
  check ((state in ('failed', 'died')) = (failure is not null)),
  check (num_nulls(name, path, size_bytes, made_at, program, tables, seen_at)
    = case state when 'kept' then 0 else 7 end),
  check ((trial is null) = (tried_at is null)),
  check ((trial_until is not null) = (trial is not null and trial = 'running')),
  check (trial is null or state = 'kept')
);
-- One is made at a time, and one is tried at a time, whatever the node.
create unique index backup_made on backup ((true)) where state = 'running';
create unique index backup_tried on backup ((true)) where trial = 'running';

-- What this held is found on the disk.
drop table backup_making;
