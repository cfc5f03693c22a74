-- Which spellings mean one supplier: what is folded away everywhere, and what moderators joined.

-- A name without what differs from member to member: full width and other forms of one character
-- (NFKC), case, runs of space, dots at the end. The only place that says so; no program repeats it.
create function supplier_folded(name text) returns text
  language sql immutable strict parallel safe
  return coalesce(
    nullif(btrim(rtrim(regexp_replace(lower(normalize(name, NFKC)), '\s+', ' ', 'g'), ' .')), ''),
    lower(normalize(name, NFKC)));

-- Stands in addresses.
create function supplier_code_of(name text) returns text
  language sql immutable strict parallel safe
  return left(md5(supplier_folded(name)), 12);

alter table lot drop column supplier_key, drop column supplier_code;
alter table lot
  -- stored, as a search by a part of a name asks it of every lot
  add column supplier_key  text not null generated always as (supplier_folded(supplier)) stored,
  add column supplier_code text not null generated always as (supplier_code_of(supplier)) stored;
create index lot_shared on lot (supplier_code) where shared and usable is not null;

-- Names that moderators joined to another. Lots keep what their owners typed; who asks for a
-- supplier is led from the spelling to its name. A head is no spelling itself.
create table supplier_spelling (
  -- of the spelling
  code       text primary key,
  spelling   text not null check (spelling <> ''),
  -- of the name it counts as
  head_code  text not null check (head_code <> code),
  head       text not null check (head <> ''),
  member_id  uuid not null references member (id),
  at         timestamptz not null,
  reason     text not null check (reason <> ''),
  number     bigint not null generated always as identity unique
);

create index supplier_spelling_head on supplier_spelling (head_code);
