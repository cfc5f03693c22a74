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

-- Vocabulary and cautions are the club's own: their history loses names and nothing else.
create trigger catalog_revision_kept before delete or truncate on catalog_revision
  for each statement execute function history_is_append_only();
create trigger catalog_revision_names before update on catalog_revision
  for each row execute function history_is_append_only('who', 'why', 'before', 'after');

-- Reports and talk are a member's: their history can leave with them, or lose its texts.
create trigger report_revision_kept before truncate on report_revision
  for each statement execute function history_is_append_only();
create trigger report_revision_left before delete on report_revision
  for each statement execute function history_leaves_with_its_owner();
create trigger report_revision_names before update on report_revision
  for each row execute function history_is_append_only('reason', 'written', 'interpreted');

create trigger talk_revision_kept before truncate on talk_revision
  for each statement execute function history_is_append_only();
create trigger talk_revision_left before delete on talk_revision
  for each statement execute function history_leaves_with_its_owner();
create trigger talk_revision_names before update on talk_revision
  for each row execute function history_is_append_only('reason', 'written');

-- What was decided about somebody's entries leaves with that somebody.
create trigger desk_decision_kept before truncate on desk_decision
  for each statement execute function history_is_append_only();
create trigger desk_decision_left before delete on desk_decision
  for each statement execute function history_leaves_with_its_owner();
create trigger desk_decision_names before update on desk_decision
  for each row execute function history_is_append_only('reason');

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
