-- What members keep for themselves: entries with the same life that only their authors see.
alter table entry drop constraint entry_kind_check;
alter table entry add constraint entry_kind_check check (kind in ('report', 'question', 'answer',
  'notice', 'photo', 'grid', 'sample', 'lot'));
