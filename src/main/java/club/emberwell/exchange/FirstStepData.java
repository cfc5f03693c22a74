package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** Which first steps a member took or put away, and whether anybody stands behind the member. */
@Priority(150)
@ApplicationScoped
class FirstStepData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "first-steps.json",
            """
            select step, at from first_step where member_id = :member order by at, step"""));
  }

  @Override
  public String erasing(Choice choice) {
    return """
        delete from first_step where member_id = :member;
        delete from invented_member where member_id = :member""";
  }
}
