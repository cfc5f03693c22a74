-- Whoever keeps a copy of the public reports asks what changed. Of each report the newest change row
-- therefore stays for good; reports whose rows are gone already get one.
insert into change_row (entity, entity_id)
select e.kind, e.id
from entry e
where e.kind = 'report'
  and not exists (select 1 from change_row c where c.entity_id = e.id and c.entity = e.kind);

create index change_row_entity on change_row (entity_id, xid, seq);
