package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** A member's machines: what a report needs to be understood stays with it, under no name. */
@ApplicationScoped
class MachineData implements PersonalData {
  private static final int AFTER_REPORTS = 500;
  private static final String ERASING =
      """
      delete from machine m
       where member_id = :member and not exists (
         select 1 from report r where r.machine_id = m.id);
      update machine
         set name = 'a machine', written = jsonb_set(written, '{name}', '"a machine"'),
             deleted_at = coalesce(deleted_at, now())
       where member_id = :member""";

  private final MemberRowsRepository rows;

  MachineData(MemberRowsRepository rows) {
    this.rows = rows;
  }

  @Override
  public int order() {
    return AFTER_REPORTS;
  }

  @Override
  public void write(UUID member, Parcel parcel) {
    parcel.rows(
        "machines.json",
        rows.json("select * from machine where member_id = :member order by number", member));
  }

  @Override
  public void erase(UUID member, Choice choice) {
    rows.run(ERASING, member);
  }
}
