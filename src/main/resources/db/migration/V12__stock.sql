-- What stands on a label. A row stays when its thing goes, so that no code comes twice.
create table tag (
  code      text primary key
    check (code ~ '^[0-9ACDEFGHJKMNPQRTVWXY]{3,5}-[0-9ACDEFGHJKMNPQRTVWXY]$'),
  entry_id  uuid unique references entry (id) on delete set null,
  given_at  timestamptz not null default now()
);
