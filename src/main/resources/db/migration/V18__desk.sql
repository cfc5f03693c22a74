-- Lists called a report by the slug that a program wrote for its material. They call it by the words in it.
update entry e
set title = concat_ws(', ',
  case when r.material_written = r.material then replace(r.material, '-', ' ')
    else r.material_written end,
  case when r.coating_written = r.coating then replace(r.coating, '-', ' ')
    else r.coating_written end,
  case when r.colour_written = r.colour then replace(r.colour, '-', ' ') else r.colour_written end,
  case when r.result_colour_written = r.result_colour then replace(r.result_colour, '-', ' ')
    else lower(r.result_colour_written) end || ' mark')
from report r
where r.id = e.id and (r.material_written = r.material and r.material like '%-%'
  or r.coating_written = r.coating and r.coating like '%-%'
  or r.colour_written = r.colour and r.colour like '%-%'
  or r.result_colour_written = r.result_colour and r.result_colour like '%-%');

-- What a rule noticed of one member's entries is decided together, as steps that are undone together.
alter table desk_undo drop constraint desk_undo_check;
alter table desk_undo add constraint desk_undo_check check (num_nonnulls(member_id, rule) > 0);
alter table desk_undo_item drop constraint desk_undo_item_step_check;
alter table desk_undo_item add constraint desk_undo_item_step_check check (step in ('remove',
  'revert', 'release', 'hold', 'flag', 'proposal', 'unban', 'note', 'seen'));
