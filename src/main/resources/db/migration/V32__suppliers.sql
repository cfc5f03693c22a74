-- What a delivery says of its supplier to others, and by which reports of it are found.

alter table lot
  -- what the supplier calls it; reports name it in the same words
  add column batch         text check (batch <> ''),
  -- what was seen when the pieces were looked at
  add column inspection    text check (inspection <> ''),
  -- whether supplier, pieces, month and counts may be counted with those of other members
  add column shared        boolean not null default false,
  -- one supplier under spellings that differ by case and space alone
  add column supplier_key  text not null generated always as (
    lower(regexp_replace(btrim(supplier), '\s+', ' ', 'g'))) stored,
  -- stands in addresses
  add column supplier_code text not null generated always as (
    left(md5(lower(regexp_replace(btrim(supplier), '\s+', ' ', 'g'))), 12)) stored,
  add column batch_key     text generated always as (
    lower(regexp_replace(btrim(batch), '\s+', ' ', 'g'))) stored;

create index lot_shared on lot (supplier_key) where shared and usable is not null;
create index lot_batch on lot (batch_key) where batch is not null;
create index report_lot on report ((lower(regexp_replace(btrim(lot), '\s+', ' ', 'g'))))
  where lot is not null;

-- The one photo of what a member keeps for themselves: our own JPEG without metadata.
create table kept_photo (
  entry_id    uuid primary key references entry (id) on delete cascade,
  width       integer not null check (width > 0),
  height      integer not null check (height > 0),
  size_bytes  integer not null check (size_bytes = length(picture)),
  picture     bytea not null,
  taken_at    timestamptz not null
);

alter table kept_photo alter column picture set storage external;
