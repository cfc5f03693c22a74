-- Backups that a running server makes by itself: one node at a time, and what came of the last.
create table backup_making (
  only_row    boolean primary key default true check (only_row),
  -- which node makes one, and when another may: nobody waits for a node that died
  maker       uuid,
  until       timestamptz,
  -- the newest that was done
  made_at     timestamptz,
  file        text,
  size_bytes  bigint check (size_bytes > 0),
  -- why the last one was not made; null: it was
  failure     text,
  check ((maker is null) = (until is null)),
  check (num_nulls(made_at, file, size_bytes) in (0, 3))
);
insert into backup_making default values;
