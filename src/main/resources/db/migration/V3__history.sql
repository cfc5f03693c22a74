-- What happened cannot be rewritten: histories and the log are append-only. The one exception is a
-- member's right to be forgotten, and only in the transaction that carries out an entry of the
-- erasure ledger. The application owns its tables, so taking away a grant would not hold it back;
-- triggers do.

-- Who asked to be forgotten, and how. Names nobody: an id alone. It has no key to the account, so
-- that a restored older account can be forgotten again.
create table erasure (
  member_id  uuid primary key,
  choice     text not null check (choice in ('keep', 'remove')),
  at         timestamptz not null,
  -- the transaction in which it was last carried out
  xid        xid8 not null default pg_current_xact_id()
);

-- The ledger itself: an entry can be carried out again, and that is all.
create function ledger_is_append_only() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' and to_jsonb(new) - 'xid' = to_jsonb(old) - 'xid' then
    return new;
  end if;
  raise exception 'the erasure ledger is append-only' using errcode = 'insufficient_privilege';
end
$$;
create trigger erasure_kept before delete or truncate on erasure
  for each statement execute function ledger_is_append_only();
create trigger erasure_entries before update on erasure
  for each row execute function ledger_is_append_only();

create function erasing_somebody() returns boolean language sql volatile as $$
  select exists (select 1 from erasure e where e.xid = pg_current_xact_id())
$$;

-- Arguments: the columns out of which a name or a text may be taken.
create function history_is_append_only() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' and to_jsonb(new) - tg_argv = to_jsonb(old) - tg_argv
    and erasing_somebody() then
    return new;
  end if;
  raise exception '% is append-only', tg_table_name using errcode = 'insufficient_privilege';
end
$$;

create function history_leaves_with_its_owner() returns trigger language plpgsql as $$
begin
  if erasing_somebody() then
    return null;
  end if;
  raise exception '% is append-only', tg_table_name using errcode = 'insufficient_privilege';
end
$$;

-- Takes a name out of the texts of a document. Keys stay, and so does a value that is nothing but
-- the name: it may be a code that happens to be spelled so.
create function without_name(doc jsonb, pattern text, name text, instead text)
  returns jsonb language plpgsql immutable as $$
declare
  said text;
begin
  case jsonb_typeof(doc)
    when 'string' then
      said := doc #>> '{}';
      return case when lower(said) = lower(name) then doc
        else to_jsonb(regexp_replace(said, pattern, instead, 'gi')) end;
    when 'array' then
      return (select coalesce(jsonb_agg(without_name(e, pattern, name, instead) order by n), '[]')
        from jsonb_array_elements(doc) with ordinality as x (e, n));
    when 'object' then
      return (select coalesce(jsonb_object_agg(k, without_name(v, pattern, name, instead)), '{}')
        from jsonb_each(doc) as x (k, v));
    else
      return doc;
  end case;
end
$$;

-- The rules that decide beside members, and how each is set. No threshold: the default of the
-- configuration.
create table desk_rule (
  code            text primary key check (code in ('first-look', 'burst', 'repeated-text',
    'newcomer-links', 'far-outside')),
  mode            text not null check (mode in ('off', 'note', 'hold')),
  threshold       double precision check (threshold between 0 and 1000),
  window_minutes  integer check (window_minutes >= 0),
  version         integer not null default 1 check (version > 0),
  changed_at      timestamptz,
  -- nobody can be noted for posting a first time
  check (code <> 'first-look' or mode <> 'note')
);
insert into desk_rule (code, mode) values
  ('first-look', 'hold'), ('burst', 'note'), ('repeated-text', 'note'), ('newcomer-links', 'note'),
  ('far-outside', 'note');

-- Who did what, why and when. Deeds with a history of their own, about entries, vocabulary and
-- cautions, stand there and are counted with them.
create sequence deed;
create table audit (
  seq        bigint primary key default nextval('deed'),
  at         timestamptz not null default now(),
  -- who did it; neither: the operator, on the server's own machine
  member_id  uuid references member (id),
  rule       text references desk_rule (code),
  action     text not null check (action ~ '^[a-z-]+$'),
  entity     text not null check (entity ~ '^[a-z-]+$'),
  entity_id  text not null,
  reason     text not null default '',
  detail     jsonb not null default '{}' check (jsonb_typeof(detail) = 'object'),
  check (member_id is null or rule is null)
);
create index audit_entity on audit (entity, entity_id, seq);
create index audit_member on audit (member_id, seq);
create index audit_action on audit (action, seq);
create index audit_at on audit (at, seq);

create trigger audit_kept before delete or truncate on audit
  for each statement execute function history_is_append_only();
create trigger audit_names before update on audit
  for each row execute function history_is_append_only('reason', 'detail');
