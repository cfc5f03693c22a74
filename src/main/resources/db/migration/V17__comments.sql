-- Comments: short words under a report, with the one life of every entry.
alter table entry drop constraint entry_kind_check;
alter table entry add constraint entry_kind_check check (kind in ('report', 'question', 'answer',
  'notice', 'photo', 'grid', 'sample', 'lot', 'comment'));
-- what it belongs to: the question of an answer, the report of a photo or a comment
alter table entry drop constraint entry_check;
alter table entry add constraint entry_check
  check ((kind in ('answer', 'photo', 'comment')) = (parent_id is not null));

alter table talk drop constraint talk_kind_check;
alter table talk add constraint talk_kind_check
  check (kind in ('question', 'answer', 'notice', 'comment'));
alter table talk add check (kind <> 'comment' or num_nonnulls(material, coating, source, process,
  machine_model, controller_version, report_id) = 0);

alter table desk_undo_item drop constraint desk_undo_item_kind_check;
alter table desk_undo_item add constraint desk_undo_item_kind_check check (kind in ('report',
  'question', 'answer', 'notice', 'photo', 'comment', 'flag', 'caution', 'member'));
