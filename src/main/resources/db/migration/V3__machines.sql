-- A member's own lasers. A deleted machine keeps its row: old reports still name it.
create table machine (
  id                 uuid primary key,
  number             bigint generated always as identity unique,
  member_id          uuid not null references member (id),
  name               text not null,
  source             text not null check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  wavelength_nm      double precision not null check (wavelength_nm > 0),
  rated_power_w      double precision not null check (rated_power_w > 0),
  motion             text not null check (motion in ('gantry', 'galvo')),
  regime             text not null check (regime in ('cw', 'long', 'ns', 'ps', 'fs')),
  gated              boolean not null,
  pulse_control      text check (pulse_control in ('set-freely', 'follows-repetition-rate')),
  lens_focal_mm      double precision check (lens_focal_mm > 0),
  beam_diameter_um   double precision check (beam_diameter_um > 0),
  max_speed_mm_s     double precision check (max_speed_mm_s > 0),
  controller_version text,
  -- exactly what the owner typed; the columns above are read from it
  written            jsonb not null,
  -- how this owner writes numbers, by which 1,000 was read
  number_style       text not null check (number_style in ('any', 'point', 'comma')),
  version            int not null check (version > 0),
  created_at         timestamptz not null,
  updated_at         timestamptz not null,
  deleted_at         timestamptz
);

create index machine_of_member on machine (member_id, number);
