-- Where members work: the air there, and what is checked.
do $$
declare kinds text;
begin
  select string_agg(distinct k[1], ', ') into kinds
  from pg_constraint, regexp_matches(pg_get_constraintdef(oid), '''[a-z-]+''', 'g') as k
  where conname = 'entry_kind_check' and conrelid = 'entry'::regclass;
  alter table entry drop constraint entry_kind_check;
  execute format('alter table entry add constraint entry_kind_check check (kind in (%s, %L))',
    kinds, 'room');
end $$;

create table room (
  id            uuid primary key,
  -- that of its entry, always
  kind          text not null generated always as ('room') stored,
  name          text not null check (name <> ''),
  -- exactly what the owner typed
  written       jsonb not null check (jsonb_typeof(written) = 'object'),
  -- how this owner writes numbers, by which 1,000 was read
  number_style  text not null check (number_style in ('any', 'point', 'comma')),
  foreign key (id, kind) references entry (id, kind) on delete cascade
);

-- What is checked in a room again and again, read from what was typed.
create table room_check (
  room_id     uuid not null references room (id) on delete cascade,
  code        text not null
    check (code in ('fire-watch', 'extinguisher', 'smoke-detector', 'co-detector', 'extraction')),
  -- null: after every job, on no day
  every_days  integer check (every_days > 0),
  last_on     date,
  due_on      date generated always as (last_on + every_days) stored,
  primary key (room_id, code)
);

create index entry_room on entry (member_id) where kind = 'room';
