-- Lasers, and what was burned with them. Numbers are held to what is physically possible; how far
-- beyond the usual the program lets them go is its own to say.

-- A member's own lasers. A deleted machine keeps its row: old reports still name it.
create table machine (
  id                  uuid primary key,
  number              bigint generated always as identity unique,
  member_id           uuid not null references member (id),
  name                text not null check (name <> ''),
  source              text not null check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  wavelength_nm       double precision not null check (wavelength_nm > 0),
  rated_power_w       double precision not null check (rated_power_w > 0),
  motion              text not null check (motion in ('gantry', 'galvo')),
  regime              text not null check (regime in ('cw', 'long', 'ns', 'ps', 'fs')),
  gated               boolean not null,
  pulse_control       text check (pulse_control in ('set-freely', 'follows-repetition-rate')),
  lens_focal_mm       double precision check (lens_focal_mm > 0),
  beam_diameter_um    double precision check (beam_diameter_um > 0),
  max_speed_mm_s      double precision check (max_speed_mm_s > 0),
  controller_version  text check (controller_version <> ''),
  -- exactly what the owner typed; the columns above are read from it
  written             jsonb not null check (jsonb_typeof(written) = 'object'),
  -- how this owner writes numbers, by which 1,000 was read
  number_style        text not null check (number_style in ('any', 'point', 'comma')),
  version             integer not null check (version > 0),
  created_at          timestamptz not null,
  updated_at          timestamptz not null,
  deleted_at          timestamptz
);

create index machine_member on machine (member_id, number);

create table report (
  id                   uuid primary key,
  -- that of its entry, always
  kind                 text not null generated always as ('report') stored,
  -- exactly as it came in; every column below is read from it
  written              jsonb not null check (jsonb_typeof(written) = 'object'),
  -- null: of somebody who is gone, so that no words are compared with theirs
  written_hash         text,
  -- how this author writes numbers, by which 1,000 was read
  number_style         text not null check (number_style in ('any', 'point', 'comma')),
  interpreter_version  integer not null check (interpreter_version > 0),
  remarks              jsonb not null check (jsonb_typeof(remarks) = 'array'),
  machine_id           uuid references machine (id),
  -- the laser as it was when the report was made; a lens changed later must not rewrite the past
  source               text not null check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  wavelength_nm        double precision not null check (wavelength_nm > 0),
  rated_power_w        double precision not null check (rated_power_w > 0),
  motion               text not null check (motion in ('gantry', 'galvo')),
  regime               text not null check (regime in ('cw', 'long', 'ns', 'ps', 'fs')),
  gated                boolean not null,
  lens_focal_mm        double precision check (lens_focal_mm > 0),
  beam_diameter_um     double precision check (beam_diameter_um > 0),
  max_speed_mm_s       double precision check (max_speed_mm_s > 0),
  -- words as written, and the slugs of what they mean. Terms are merged or deprecated, never
  -- deleted, so a word that was read stays known.
  material             text,
  material_kind        text not null generated always as ('material') stored,
  material_written     text not null check (material_written <> ''),
  coating              text,
  coating_kind         text not null generated always as ('coating') stored,
  coating_written      text check (coating_written <> ''),
  colour               text,
  colour_kind          text not null generated always as ('colour') stored,
  colour_written       text check (colour_written <> ''),
  process              text not null check (process in ('surface-engraving', 'deep-engraving',
    'coating-removal', 'colour-marking', 'cut', 'score')),
  thickness_mm         double precision check (thickness_mm > 0),
  lot                  text check (lot <> ''),
  controller_version   text check (controller_version <> ''),
  notes                text check (notes <> ''),
  repeat_of            uuid references report (id),
  foreign key (id, kind) references entry (id, kind) on delete cascade,
  foreign key (material_kind, material) references term (kind, slug),
  foreign key (coating_kind, coating) references term (kind, slug),
  foreign key (colour_kind, colour) references term (kind, slug),
  -- of a machine of the author's, or of a laser that is described
  check ((written ? 'machine') <> (written ? 'laser')),
  check ((written ? 'machine') = (machine_id is not null)),
  check (coating is null or coating_written is not null),
  check (colour is null or colour_written is not null),
  check (repeat_of <> id)
);

create index report_same_words on report (written_hash) where written_hash is not null;
create index report_machine on report (machine_id) where machine_id is not null;
create index report_repeats on report (repeat_of) where repeat_of is not null;

create table trial (
  report_id    uuid not null references report (id) on delete cascade,
  position     integer not null check (position >= 0),
  grid_row     integer check (grid_row >= 0),
  grid_column  integer check (grid_column >= 0),
  -- canonical numbers, flags and words by code; what follows from them is computed
  settings     jsonb not null check (jsonb_typeof(settings) = 'object'),
  effect       text not null check (effect in ('too-little', 'right', 'too-much')),
  quality      integer check (quality between 1 and 5),
  defects      text[] not null check (array_position(defects, null) is null),
  primary key (report_id, position),
  check ((grid_row is null) = (grid_column is null)),
  check ((settings ? 'powerPercent') <> (settings ? 'powerW')),
  check (quality is null or effect = 'right')
);

-- A picture of a report; one that was taken away leaves its entry and no bytes.
create table photo (
  id          uuid primary key,
  -- that of its entry, always
  kind        text not null generated always as ('photo') stored,
  width       integer not null check (width > 0),
  height      integer not null check (height > 0),
  size_bytes  integer not null check (size_bytes = length(picture) + length(thumb)),
  picture     bytea not null,
  thumb       bytea not null,
  foreign key (id, kind) references entry (id, kind) on delete cascade
);

alter table photo alter column picture set storage external;
alter table photo alter column thumb set storage external;

-- One row: up to which catalog and interpreter all reports have been read.
create table report_reading (
  only_row             boolean primary key default true check (only_row),
  catalog_version      bigint not null,
  interpreter_version  integer not null
);

insert into report_reading (catalog_version, interpreter_version) values (0, 1);
