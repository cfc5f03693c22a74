create table report (
  id                  uuid primary key,
  number              bigint generated always as identity unique,
  version             int not null,
  state               text not null,
  member_id           uuid not null references member (id),
  -- where the entry was made: null = here, else the other club's address and its version of it
  origin              text,
  origin_version      int,
  -- exactly as it came in; every column below down to "updated_at" is read from it
  written             jsonb not null,
  written_hash        text not null,
  -- how this author writes numbers, by which 1,000 was read
  number_style        text not null,
  interpreter_version int not null,
  remarks             jsonb not null,
  machine_id          uuid references machine (id),
  -- the laser as it was when the report was made; a lens changed later must not rewrite the past
  source              text not null,
  wavelength_nm       double precision not null,
  rated_power_w       double precision not null,
  motion              text not null,
  regime              text not null,
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
  process             text not null,
  thickness_mm        double precision,
  lot                 text,
  controller_version  text,
  notes               text,
  repeat_of           uuid references report (id),
  created_at          timestamptz not null,
  updated_at          timestamptz not null
);

create index report_of_member on report (member_id, created_at desc);
create index report_same_words on report (member_id, written_hash, created_at);
create index report_repeats on report (repeat_of) where repeat_of is not null;
create index report_live on report (number) where state = 'LIVE';
create index report_material on report (material);
create index report_waiting on report (created_at) where state in ('WAITING', 'HELD');

create table trial (
  report_id           uuid not null references report (id),
  position            int not null,
  grid_row            int,
  grid_column         int,
  power_percent       double precision,
  power_w             double precision,
  speed_mm_s          double precision,
  line_spacing_mm     double precision,
  passes              int,
  repetition_rate_khz double precision,
  pulse_duration_ns   double precision,
  focus_offset_mm     double precision,
  air_assist          boolean,
  direction           text,
  cross_pass          boolean,
  average_power_w     double precision,
  areal_dose          double precision,
  line_dose           double precision,
  pulse_energy_mj     double precision,
  peak_power_kw       double precision,
  peak_fluence        double precision,
  pulse_pitch_um      double precision,
  pulse_overlap       double precision,
  pulses_per_spot     double precision,
  pulses_per_area     double precision,
  line_overlap        double precision,
  effect              text not null,
  quality             int,
  defects             text[] not null,
  primary key (report_id, position)
);

-- Every state a report was ever in; rows are only added.
create table report_revision (
  report_id   uuid not null references report (id),
  version     int not null,
  action      text not null,
  editor_id   uuid references member (id),
  at          timestamptz not null,
  reason      text,
  state       text not null,
  written     jsonb not null,
  interpreted jsonb not null,
  primary key (report_id, version)
);

create table photo (
  id         uuid primary key,
  number     bigint generated always as identity,
  report_id  uuid not null references report (id),
  member_id  uuid not null references member (id),
  width      int not null,
  height     int not null,
  size_bytes int not null,
  picture    bytea not null,
  thumb      bytea not null,
  created_at timestamptz not null
);

alter table photo alter column picture set storage external;
alter table photo alter column thumb set storage external;
create index photo_of_report on photo (report_id, number);
create index photo_of_member on photo (member_id);

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
