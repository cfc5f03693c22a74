-- For those who keep a copy of the public reports: that a report changed, whatever became of it. Read
-- like change rows, but kept for good, the newest of each report; ids say nothing of anybody.
create table report_change (
  seq        bigint generated always as identity primary key,
  xid        xid8 not null default pg_current_xact_id(),
  report_id  uuid not null,
  at         timestamptz not null default now()
);

create index report_change_order on report_change (xid, seq);
create index report_change_report on report_change (report_id, xid, seq);

create function report_changed() returns trigger language plpgsql as $$
begin
  insert into report_change (report_id) values (new.entity_id);
  return null;
end
$$;
create trigger report_changed after insert on change_row
  for each row when (new.entity = 'report') execute function report_changed();

insert into report_change (report_id)
select id from entry where kind = 'report' order by number;
