-- Which club this database holds. A home bears the same mark, so that neither an empty database nor
-- another club's is taken for its own. Written at the first start, not here: a restored older
-- database takes the mark of the home beside it.
create table club_mark (
  only_row  boolean primary key default true check (only_row),
  club      uuid not null,
  since     timestamptz not null default now()
);
