package club.emberwell.exchange.bench;

import club.emberwell.exchange.PersonalData;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/** When a member saved the bench; a copy that was sent is the member's own file. */
@Priority(480)
@ApplicationScoped
class BenchCopyData implements PersonalData {
  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "bench-copies.json", "select saved_at from saved_bench where member_id = :member"));
  }

  @Override
  public String erasing(Choice choice) {
    return """
        delete from sent_bench where member_id = :member;
        delete from saved_bench where member_id = :member""";
  }
}
