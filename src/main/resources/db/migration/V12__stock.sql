-- What stands on a label. A row stays when its thing goes, so that no code comes twice.
create table tag (
  code      text primary key
    check (code ~ '^[0-9ACDEFGHJKMNPQRTVWXY]{3,5}-[0-9ACDEFGHJKMNPQRTVWXY]$'),
  entry_id  uuid unique references entry (id) on delete set null,
  given_at  timestamptz not null default now()
);

-- Test pieces somebody keeps: what they show and where they lie.
create table sample (
  id         uuid primary key,
  -- that of its entry, always
  kind       text not null generated always as ('sample') stored,
  report_id  uuid references report (id) on delete set null,
  grid_id    uuid references grid (id) on delete set null,
  what       text check (what <> ''),
  box        text check (box <> ''),
  place      text check (place <> ''),
  notes      text check (notes <> ''),
  foreign key (id, kind) references entry (id, kind) on delete cascade,
  check (num_nonnulls(report_id, grid_id) <= 1)
);

create index sample_report on sample (report_id) where report_id is not null;
create index sample_grid on sample (grid_id) where grid_id is not null;

-- Deliveries of blanks, in their owner's words.
create table lot (
  id           uuid primary key,
  -- that of its entry, always
  kind         text not null generated always as ('lot') stored,
  supplier     text not null check (supplier <> ''),
  material     text not null check (material <> ''),
  coating      text check (coating <> ''),
  colour       text check (colour <> ''),
  -- pieces
  received     integer not null check (received > 0),
  usable       integer check (usable between 0 and received),
  burned       integer check (burned between 0 and coalesce(usable, received)),
  received_on  date,
  notes        text check (notes <> ''),
  foreign key (id, kind) references entry (id, kind) on delete cascade
);
