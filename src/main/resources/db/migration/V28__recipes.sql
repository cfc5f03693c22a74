-- Recipes: whole settings a member keeps for one job, seen by nobody else.
alter table entry drop constraint entry_kind_check;
alter table entry add constraint entry_kind_check check (kind in ('report', 'question', 'answer',
  'notice', 'photo', 'grid', 'sample', 'lot', 'comment', 'recipe'));

create table recipe (
  id              uuid primary key,
  -- that of its entry, always
  kind            text not null generated always as ('recipe') stored,
  -- exactly as it was written last
  written         jsonb not null check (jsonb_typeof(written) = 'object'),
  -- of the words it came in with first: the same twice is one recipe
  asked_hash      text not null check (asked_hash <> ''),
  -- how its owner writes numbers, by which 1,000 was read
  number_style    text not null check (number_style in ('any', 'point', 'comma')),
  folder          text check (folder <> ''),
  -- what a search looks in, in lower case
  words           text not null,
  machine_id      uuid not null references machine (id),
  -- the laser as it was when the recipe was written last
  source          text not null check (source in ('co2', 'diode', 'fibre', 'green', 'uv', 'infrared')),
  wavelength_nm   double precision not null check (wavelength_nm > 0),
  rated_power_w   double precision not null check (rated_power_w > 0),
  motion          text not null check (motion in ('gantry', 'galvo')),
  regime          text not null check (regime in ('cw', 'long', 'ns', 'ps', 'fs')),
  gated           boolean not null,
  lens_focal_mm   double precision check (lens_focal_mm > 0),
  beam_diameter_um double precision check (beam_diameter_um > 0),
  max_speed_mm_s  double precision check (max_speed_mm_s > 0),
  -- when its owner last said that they used it; no change of the recipe
  used_at         timestamptz,
  foreign key (id, kind) references entry (id, kind) on delete cascade
);

create index recipe_machine on recipe (machine_id);

-- Reports that were posted with a recipe.
create table recipe_report (
  recipe_id  uuid not null references recipe (id) on delete cascade,
  report_id  uuid not null references report (id) on delete cascade,
  -- of the recipe
  version    integer not null check (version > 0),
  primary key (recipe_id, report_id)
);

create index recipe_report_report on recipe_report (report_id);
