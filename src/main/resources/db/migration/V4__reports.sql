-- What members write and others may see: one life for every kind. What a kind has of its own stands
-- in a table of that kind, with the same id.
create table entry (
  id              uuid primary key,
  number          bigint generated always as identity unique,
  kind            text not null check (kind in ('report', 'question', 'answer', 'notice', 'photo')),
  member_id       uuid not null references member (id),
  state           text not null check (state in ('live', 'waiting', 'held', 'removed', 'withdrawn')),
  version         int not null check (version > 0),
  -- what it belongs to: the question of an answer, the report of a photo
  parent_id       uuid references entry (id),
  -- what lists call it
  title           text not null,
  -- where it was made: null = here, else the other club's address and its version of it
  origin          text,
  origin_version  int,
  created_at      timestamptz not null,
  updated_at      timestamptz not null,
  unique (id, kind),
  check ((kind in ('answer', 'photo')) = (parent_id is not null)),
  check ((origin is null) = (origin_version is null))
);

create index entry_of_member on entry (member_id, created_at desc);
create index entry_live on entry (kind, number) where state = 'live';
create index entry_below on entry (parent_id, created_at, number) where parent_id is not null;
create index entry_waiting on entry (created_at) where state = 'waiting';

-- Every state an entry was ever in; rows are only added. What a moderator or a rule decided is such a
-- row and nothing else.
create table entry_revision (
  entry_id     uuid not null references entry (id),
  version      int not null,
  -- its place in the log, among the deeds that have no history of their own
  seq          bigint not null unique default nextval('deed'),
  action       text not null check (action in ('posted', 'edited', 'accepted', 'withdrawn', 'held',
    'removed', 'approved', 'restored', 'photo-added', 'photo-removed', 'read-again')),
  -- who did it; neither: the server itself
  member_id    uuid references member (id),
  rule         text,
  at           timestamptz not null,
  reason       text,
  state        text not null check (state in ('live', 'waiting', 'held', 'removed', 'withdrawn')),
  -- null: the words of the version before
  written      jsonb,
  interpreted  jsonb,
  primary key (entry_id, version),
  check (member_id is null or rule is null),
  check (written is not null or version > 1)
);

create index deed_seq on entry_revision (seq)
  where action in ('held', 'removed', 'approved', 'restored');
create index deed_member on entry_revision (member_id, at)
  where action in ('edited', 'held', 'removed', 'approved', 'restored');
create index deed_rule on entry_revision (rule, at) where rule is not null;

create table report (
  id                  uuid primary key references entry (id) on delete cascade,
  -- exactly as it came in; every column below is read from it
  written             jsonb not null,
  written_hash        text not null,
  -- how this author writes numbers, by which 1,000 was read
  number_style        text not null check (number_style in ('any', 'point', 'comma')),
  interpreter_version int not null,
  remarks             jsonb not null,
  machine_id          uuid references machine (id),
  -- the laser as it was when the report was made; a lens changed later must not rewrite the past
  source              text not null check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  wavelength_nm       double precision not null check (wavelength_nm > 0),
  rated_power_w       double precision not null check (rated_power_w > 0),
  motion              text not null check (motion in ('gantry', 'galvo')),
  regime              text not null check (regime in ('cw', 'long', 'ns', 'ps', 'fs')),
  gated               boolean not null,
  lens_focal_mm       double precision,
  beam_diameter_um    double precision,
  max_speed_mm_s      double precision,
  material            text,
  material_written    text not null,
  coating             text,
  coating_written     text,
  colour              text,
  colour_written      text,
  process             text not null check (process in ('surface-engraving', 'deep-engraving',
    'coating-removal', 'colour-marking', 'cut', 'score')),
  thickness_mm        double precision check (thickness_mm >= 0),
  lot                 text,
  controller_version  text,
  notes               text,
  repeat_of           uuid references report (id),
  check ((machine_id is null) = (written -> 'machine' is null)),
  check (material is null or material_written is not null),
  check (coating is null or coating_written is not null),
  check (colour is null or colour_written is not null),
  check (repeat_of <> id)
);

create index report_same_words on report (written_hash);
create index report_repeats on report (repeat_of) where repeat_of is not null;
create index report_material on report (material);

create table trial (
  report_id           uuid not null references report (id) on delete cascade,
  position            int not null,
  grid_row            int,
  grid_column         int,
  -- canonical numbers, flags and words by code; what follows from them is computed
  settings            jsonb not null,
  effect              text not null,
  quality             int,
  defects             text[] not null,
  primary key (report_id, position),
  check (position >= 0),
  check ((grid_row is null) = (grid_column is null)),
  check ((settings ? 'powerPercent') <> (settings ? 'powerW')),
  check (effect in ('too-little', 'right', 'too-much')),
  check (quality is null or (quality between 1 and 5 and effect = 'right'))
);

-- A picture of a report; one that was taken away leaves its entry and no bytes.
create table photo (
  id         uuid primary key references entry (id) on delete cascade,
  width      int not null check (width > 0),
  height     int not null check (height > 0),
  size_bytes int not null check (size_bytes = length(picture) + length(thumb)),
  picture    bytea not null,
  thumb      bytea not null
);

alter table photo alter column picture set storage external;
alter table photo alter column thumb set storage external;

-- What changed, for every node's index: ids only. xid and seq give the order in which
-- a reader that stays below pg_snapshot_xmin misses nothing.
create table change_row (
  seq       bigint generated always as identity primary key,
  xid       xid8 not null default pg_current_xact_id(),
  entity    text not null,
  entity_id uuid not null,
  at        timestamptz not null default now()
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
  only_row    boolean primary key default true check (only_row),
  epoch       uuid not null,
  trimmed_xid bigint not null default 0,
  trimmed_seq bigint not null default 0
);

insert into history_epoch (epoch) values (gen_random_uuid());

-- One row: up to which catalog and interpreter all reports have been read.
create table report_reading (
  only_row            boolean primary key default true check (only_row),
  catalog_version     bigint not null,
  interpreter_version int not null
);

insert into report_reading (catalog_version, interpreter_version) values (0, 1);
