-- What pieces lie in while they are burned, in its owner's words.

-- one more kind beside whatever kinds there are
do $$
declare
  was text := (select pg_get_constraintdef(oid) from pg_constraint
    where conname = 'entry_kind_check' and conrelid = 'entry'::regclass);
begin
  alter table entry drop constraint entry_kind_check;
  execute 'alter table entry add constraint entry_kind_check '
    || replace(was, quote_literal('lot') || '::text',
      quote_literal('lot') || '::text, ' || quote_literal('fixture') || '::text');
end
$$;

create table fixture (
  id            uuid primary key,
  -- that of its entry, always
  kind          text not null generated always as ('fixture') stored,
  name          text not null check (name <> ''),
  place         text check (place <> ''),
  notes         text check (notes <> ''),
  -- of the positions
  row_count     integer not null check (row_count > 0),
  column_count  integer not null check (column_count > 0),
  -- pieces in one load; never more than there are positions
  pieces        integer not null check (pieces between 1 and row_count * column_count),
  -- as they were typed: pitch and offset in x and y
  lengths       jsonb not null check (jsonb_typeof(lengths) = 'object'),
  -- how this author writes numbers, by which 1,000 was read
  number_style  text not null check (number_style in ('any', 'point', 'comma')),
  foreign key (id, kind) references entry (id, kind) on delete cascade
);
