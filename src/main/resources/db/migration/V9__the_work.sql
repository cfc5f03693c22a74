-- The rest of the work by which ranges are told apart, and what else a search can be narrowed by.

-- What a mark came out as, a word of the same vocabulary as the coating's colour.
alter table report
  add column result_colour          text,
  add column result_colour_kind     text not null generated always as ('colour') stored,
  add column result_colour_written  text check (result_colour_written <> ''),
  add column supplier               text check (supplier <> ''),
  add foreign key (result_colour_kind, result_colour) references term (kind, slug),
  add check (result_colour is null or result_colour_written is not null);

-- What the maker calls it.
alter table machine
  add column model  text check (model <> '');

-- What stands below this term responds as it does, so that their trials share a range.
alter table term
  add column responds_alike  boolean not null default false;

-- A report is found by whether it has a picture, so it changes with its pictures.
create or replace function entry_changed() returns trigger language plpgsql as $$
begin
  insert into change_row (entity, entity_id)
  values (coalesce(new.kind, old.kind), coalesce(new.id, old.id));
  if coalesce(new.kind, old.kind) = 'photo' then
    insert into change_row (entity, entity_id)
    values ('report', coalesce(new.parent_id, old.parent_id));
  end if;
  return null;
end
$$;

-- It is found by what its machine is called, too.
create function machine_renamed() returns trigger language plpgsql as $$
begin
  insert into change_row (entity, entity_id)
  select r.kind, r.id from report r where r.machine_id = new.id;
  return null;
end
$$;
create trigger machine_renamed after update on machine for each row
  when (old.name is distinct from new.name or old.model is distinct from new.model)
  execute function machine_renamed();
