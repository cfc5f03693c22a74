-- Glasses by what is printed on them, and what stands between a machine's beam and people.
-- The kind is added to those there are, so that none which came from elsewhere is lost.
do $$
declare kinds text;
begin
  select string_agg(distinct k[1], ', ') into kinds
  from pg_constraint, regexp_matches(pg_get_constraintdef(oid), '''[a-z-]+''', 'g') as k
  where conname = 'entry_kind_check' and conrelid = 'entry'::regclass;
  alter table entry drop constraint entry_kind_check;
  execute format('alter table entry add constraint entry_kind_check check (kind in (%s, %L))',
    kinds, 'eyewear');
end $$;

create table eyewear (
  id       uuid primary key,
  -- that of its entry, always
  kind     text not null generated always as ('eyewear') stored,
  name     text not null check (name <> ''),
  -- as printed, line by line
  marking  text not null check (marking <> ''),
  notes    text check (notes <> ''),
  foreign key (id, kind) references entry (id, kind) on delete cascade
);

alter table machine
  add column housing text check (housing in ('open', 'interlocked', 'closed'));
