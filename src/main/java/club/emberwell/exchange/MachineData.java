package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** A member's machines: what a report needs to be understood stays with it, under no name. */
@Priority(200)
@ApplicationScoped
class MachineData implements PersonalData {
  private static final String ERASING =
      """
      delete from machine m
       where member_id = :member and not exists (
         select 1 from report r where r.machine_id = m.id);
      update machine
         set name = 'a machine', written = jsonb_set(written, '{name}', '"a machine"'),
             deleted_at = coalesce(deleted_at, now())
       where member_id = :member""";

  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "machines.json", "select * from machine where member_id = :member order by number"));
  }

  @Override
  public String erasing(Choice choice) {
    return ERASING;
  }
}
