-- A member's rights: who asked to be forgotten, and how. Names nobody: an id alone. It has no key
-- to the account, so that a restored older account can be forgotten again.
create table erasure (
  member_id  uuid primary key,
  choice     text not null check (choice in ('keep', 'remove')),
  at         timestamptz not null,
  -- the transaction in which it was last carried out
  xid        xid8 not null default pg_current_xact_id()
);

-- Whoever is gone is called 'former member', so that name may stand many times; so may none.
drop index member_handle;
create unique index member_handle on member (lower(handle)) where status <> 'erased';

-- The log stays append-only with one exception: in the transaction that erases somebody, names can
-- be taken out. Who did what to what, and when, cannot be changed even then.
drop trigger audit_append_only on audit;
create trigger audit_append_only before delete or truncate on audit
  for each statement execute function audit_is_append_only();

create function audit_names_only() returns trigger language plpgsql as $$
begin
  if exists (select 1 from erasure e where e.xid = pg_current_xact_id())
    and new.seq = old.seq and new.at = old.at and new.action = old.action
    and new.entity = old.entity and new.entity_id = old.entity_id
    and new.actor_id is not distinct from old.actor_id then
    return new;
  end if;
  raise exception 'the audit log is append-only' using errcode = 'insufficient_privilege';
end
$$;
create trigger audit_names before update on audit
  for each row execute function audit_names_only();

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
