-- Test grids: planned by a member for one machine, seen by nobody else, judged by a report.
create table grid (
  id              uuid primary key,
  -- that of its entry, always
  kind            text not null generated always as ('grid') stored,
  -- exactly as it came in, its axes with their values
  written         jsonb not null check (jsonb_typeof(written) = 'object'),
  -- of the words it came in with, before its axes had their values: the same twice is one grid
  asked_hash      text not null check (asked_hash <> ''),
  -- how this author writes numbers, by which 1,000 was read
  number_style    text not null check (number_style in ('any', 'point', 'comma')),
  machine_id      uuid references machine (id),
  -- the laser as it was when the grid was planned
  source          text not null check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  wavelength_nm   double precision not null check (wavelength_nm > 0),
  rated_power_w   double precision not null check (rated_power_w > 0),
  motion          text not null check (motion in ('gantry', 'galvo')),
  regime          text not null check (regime in ('cw', 'long', 'ns', 'ps', 'fs')),
  gated           boolean not null,
  lens_focal_mm   double precision check (lens_focal_mm > 0),
  beam_diameter_um double precision check (beam_diameter_um > 0),
  max_speed_mm_s  double precision check (max_speed_mm_s > 0),
  -- that holds its results; null: none yet
  report_id       uuid references report (id) on delete set null,
  foreign key (id, kind) references entry (id, kind) on delete cascade,
  check ((written ? 'machine') <> (written ? 'laser')),
  check ((written ? 'machine') = (machine_id is not null))
);

create index grid_machine on grid (machine_id) where machine_id is not null;
create unique index grid_report on grid (report_id) where report_id is not null;

-- The photo of a burned grid, for its author: our own JPEG without metadata.
create table grid_photo (
  grid_id   uuid primary key references grid (id) on delete cascade,
  width     integer not null check (width > 0),
  height    integer not null check (height > 0),
  size_bytes integer not null check (size_bytes = length(picture)),
  picture   bytea not null,
  -- x and y of the four in turn, as shares of the picture, clockwise from the top left of the cells
  corners   double precision[] check (
    cardinality(corners) = 8 and 0 <= all (corners) and 1 >= all (corners)),
  -- the same picture among those of the report
  shown_id  uuid references photo (id) on delete set null,
  taken_at  timestamptz not null
);

alter table grid_photo alter column picture set storage external;
create index grid_photo_shown on grid_photo (shown_id) where shown_id is not null;
