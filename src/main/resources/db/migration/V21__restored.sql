-- Where the numbers of transactions that stand in the tables are numbers: of which server, on which of
-- its timelines, in which database and table. A restored copy lies elsewhere than it says, and by that
-- it is known. Empty: not noted yet.
alter table history_epoch
  add column lies_at  text not null default '',
  -- rises with every history, so that an older one that comes back is known
  add column number   bigint not null default 1 check (number > 0);
