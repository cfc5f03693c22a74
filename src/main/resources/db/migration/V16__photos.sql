-- Photos of questions and answers as of reports: what they show in words, which stands first, the
-- sizes a page asks for made once.

alter table photo
  add column caption  text check (caption <> ''),
  -- for those who do not see it; null: said from what the entry is called
  add column alt      text check (alt <> ''),
  -- among those of the same entry, the least first
  add column place    integer not null default 0,
  -- between the two; null where the large one is no larger, or until somebody asks for it
  add column middle   bytea,
  drop constraint photo_check,
  add constraint photo_size_check check (
    size_bytes = length(picture) + length(thumb) + coalesce(length(middle), 0));

alter table photo alter column middle set storage external;

alter table entry_revision drop constraint entry_revision_action_check;
alter table entry_revision add constraint entry_revision_action_check check (action in ('posted',
  'edited', 'accepted', 'withdrawn', 'held', 'removed', 'approved', 'restored', 'photo-added',
  'photo-changed', 'photo-removed', 'read-again'));

-- A picture of a form that is not stored yet, seen by its member alone: it becomes a photo of what
-- the form makes, or goes after some days.
create table parked_photo (
  -- what the photo will have
  id          uuid primary key,
  member_id   uuid not null references member (id),
  -- id of the form, which its entry gets
  form_id     uuid not null,
  place       integer not null,
  caption     text check (caption <> ''),
  alt         text check (alt <> ''),
  width       integer not null check (width > 0),
  height      integer not null check (height > 0),
  size_bytes  integer not null check (
    size_bytes = length(picture) + length(thumb) + coalesce(length(middle), 0)),
  picture     bytea not null,
  middle      bytea,
  thumb       bytea not null,
  parked_at   timestamptz not null
);

alter table parked_photo alter column picture set storage external;
alter table parked_photo alter column middle set storage external;
alter table parked_photo alter column thumb set storage external;
create index parked_photo_form on parked_photo (member_id, form_id);
create index parked_photo_parked on parked_photo (parked_at);

-- What a photo belongs to changes with it, whatever it is.
create or replace function entry_changed() returns trigger language plpgsql as $$
declare
  was text := case when tg_op <> 'INSERT' then old.state end;
  now_is text := case when tg_op <> 'DELETE' then new.state end;
begin
  insert into change_row (entity, entity_id, version, move)
  values (coalesce(new.kind, old.kind), coalesce(new.id, old.id), new.version,
    case
      when now_is = 'live' and was is distinct from 'live' then 'appeared'
      when now_is = 'live' and new.version <> old.version then 'changed'
      when was = 'live' and now_is is distinct from 'live' then 'gone'
      when now_is = 'waiting' and was is distinct from 'waiting' then 'waiting'
    end);
  if coalesce(new.kind, old.kind) = 'photo' then
    insert into change_row (entity, entity_id)
    select e.kind, e.id from entry e where e.id = coalesce(new.parent_id, old.parent_id);
  end if;
  return null;
end
$$;

-- How much of a member's pictures the club keeps; missing: as much as the program says.
alter table club_option drop constraint club_option_key_check;
alter table club_option add constraint club_option_key_check check (key in ('door', 'reading',
  'club-name', 'local-sign-in', 'licence', 'notes', 'club-version', 'form-key', 'data-licence',
  'photo-megabytes'));
alter table club_option add check (key <> 'photo-megabytes' or value ~ '^[1-9][0-9]*$');
