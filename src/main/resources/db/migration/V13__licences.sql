-- Under which licence what members post may be used, as each of them chose.

-- What holds for whoever chose nothing: as the club said in its own words. A record is measurements
-- and texts together, so where both have terms of their own the record has those of its texts.
alter table club_option drop constraint club_option_key_check;
alter table club_option add constraint club_option_key_check check (key in ('door', 'reading',
  'club-name', 'local-sign-in', 'licence', 'notes', 'club-version', 'form-key', 'data-licence'));
alter table club_option add check (key <> 'data-licence'
  or value in ('CC0-1.0', 'CC-BY-4.0', 'CC-BY-SA-4.0'));
insert into club_option (key, value)
select 'data-licence', case
    when value ~* 'BY-SA' then 'CC-BY-SA-4.0'
    when value ~* 'CC[ -]BY' then 'CC-BY-4.0'
    when value ~* 'CC0' then 'CC0-1.0'
    else 'CC-BY-4.0' end
from club_option where key = 'licence';

alter table member
  -- null: what the club decided
  add column licence  text check (licence in ('CC0-1.0', 'CC-BY-4.0', 'CC-BY-SA-4.0')),
  -- whether data that leave the club name this member as author
  add column named    boolean not null default true;
update member set named = false where status = 'erased';
alter table member add check (status <> 'erased' or (licence is null and not named));

-- Entries keep what held when they were posted; older ones have the club's. Added with a constant,
-- so that no row is written and no index is built anew.
do $$
begin
  execute format(
    'alter table entry add column licence text not null default %L
       check (licence in (''CC0-1.0'', ''CC-BY-4.0'', ''CC-BY-SA-4.0'')),
     add column named boolean not null default true',
    (select value from club_option where key = 'data-licence'));
end
$$;
alter table entry alter column licence drop default, alter column named drop default;

-- No door can forget it. What comes from elsewhere brings its own.
create function entry_licensed() returns trigger language plpgsql as $$
begin
  select coalesce(new.licence, m.licence, o.value), coalesce(new.named, m.named)
  into new.licence, new.named
  from member m, club_option o
  where m.id = new.member_id and o.key = 'data-licence';
  return new;
end
$$;
create trigger entry_licensed before insert on entry
  for each row execute function entry_licensed();

-- The data as they were given out last: one package for all nodes, its zip file in parts.
create table data_package (
  id          uuid primary key,
  made_at     timestamptz not null,
  -- whatever older transactions did is in it
  seen        xid8 not null,
  -- what is told of it: counts, licences, files with their sums
  described   jsonb not null check (jsonb_typeof(described) = 'object'),
  size_bytes  bigint not null check (size_bytes > 0)
);
create index data_package_age on data_package (made_at);

create table data_package_part (
  package_id  uuid not null references data_package (id) on delete cascade,
  position    integer not null check (position >= 0),
  bytes       bytea not null check (length(bytes) > 0),
  primary key (package_id, position)
);
alter table data_package_part alter column bytes set storage external;

-- One node makes it at a time.
create table data_making (
  only_row  boolean primary key default true check (only_row),
  -- somebody wants it made anew
  asked_at  timestamptz,
  -- which node makes it, and when another one may: nobody waits for a node that died
  maker     uuid,
  until     timestamptz,
  check ((maker is null) = (until is null))
);
insert into data_making default values;
