-- Decisions about one's entries and answers to one's flags stand in the inbox beside what watches find. They are new
-- until the member says that all is read.
create table told (
  member_id  uuid primary key references member (id),
  -- everything up to here was read; no row: nothing yet
  read_to    timestamptz not null
);
insert into told (member_id, read_to) select id, now() from member where status <> 'erased';

-- Decided revisions are few: those since a time are found without a look at all of a member's entries.
create index entry_revision_told on entry_revision (at)
  where action in ('held', 'removed', 'restored');
