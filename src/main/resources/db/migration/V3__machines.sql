-- A member's own lasers. A deleted machine keeps its row: old reports still name it.
create table machine (
  id                 uuid primary key,
  number             bigint generated always as identity unique,
  member_id          uuid not null references member (id),
  name               text not null,
  source             text not null,
  wavelength_nm      double precision not null,
  rated_power_w      double precision not null,
  motion             text not null,
  regime             text not null,
  gated              boolean not null,
  pulse_control      text,
  lens_focal_mm      double precision,
  beam_diameter_um   double precision,
  max_speed_mm_s     double precision,
  controller_version text,
  -- exactly what the owner typed; the columns above are read from it
  written            jsonb not null,
  -- how this owner writes numbers, by which 1,000 was read
  number_style       text not null,
  version            int not null,
  created_at         timestamptz not null,
  updated_at         timestamptz not null,
  deleted_at         timestamptz
);

create index machine_of_member on machine (member_id, number);
