-- What happened cannot be rewritten: revisions and decisions are append-only like the audit log.
-- The one exception is a member's right to be forgotten, and only in the transaction that carries
-- out an entry of the erasure ledger.

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

-- Vocabulary and cautions are the club's own: their history loses texts and nothing else.
create trigger catalog_revision_kept before delete or truncate on catalog_revision
  for each statement execute function history_is_append_only();
create trigger catalog_revision_names before update on catalog_revision
  for each row execute function history_is_append_only('why', 'before', 'after');

-- Entries are a member's: their history can leave with them, or lose its texts.
create trigger entry_revision_kept before truncate on entry_revision
  for each statement execute function history_is_append_only();
create trigger entry_revision_left before delete on entry_revision
  for each statement execute function history_leaves_with_its_owner();
create trigger entry_revision_names before update on entry_revision
  for each row execute function history_is_append_only('reason', 'written', 'interpreted');

-- The log: what has no history of its own, and what moderators and rules decided about entries.
-- Each part is one table and nothing joined to it, so that the newest lines are read from both ends.
create view audit_line as
  select a.seq, a.at, a.actor_id, a.actor_label, a.action, a.entity, a.entity_id, a.reason, a.detail
  from audit a
  union all
  select v.seq, v.at, v.member_id,
    coalesce(
      (select case m.status when 'erased' then 'former member' else m.handle end
        from member m where m.id = v.member_id),
      'rule ' || v.rule),
    case when (select e.kind from entry e where e.id = v.entry_id) <> 'photo'
      then case v.action when 'approved' then 'restored' else v.action end
      when v.action in ('held', 'removed') then 'hide' else 'show' end,
    (select e.kind from entry e where e.id = v.entry_id), cast(v.entry_id as text),
    coalesce(v.reason, ''), jsonb '{}'
  from entry_revision v
  where v.action in ('held', 'removed', 'approved', 'restored')
    and (v.member_id is not null or v.rule is not null);

-- An entry can leave with its author; that somebody decided about it stays in the log.
create function deeds_stay_in_the_log() returns trigger language plpgsql as $$
begin
  insert into audit (seq, at, actor_id, actor_label, action, entity, entity_id, reason, detail)
  select seq, at, actor_id, actor_label, action, entity, entity_id, reason, detail
  from audit_line where seq = old.seq;
  return old;
end
$$;
create trigger entry_revision_deeds before delete on entry_revision for each row
  when (old.action in ('held', 'removed', 'approved', 'restored'))
  execute function deeds_stay_in_the_log();

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
