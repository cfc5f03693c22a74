package club.emberwell.exchange;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * Webhooks a member added. They are the club's and stay; what waits in their outbox about the
 * member's entries goes, before the entries do.
 */
@Priority(600)
@ApplicationScoped
class HookData implements PersonalData {
  private static final String ERASING =
      """
      delete from webhook_delivery
       where entry_id in (select id from entry where member_id = :member)""";

  @Override
  public List<Rows> lists() {
    return List.of(
        new Rows(
            "webhooks.json",
            """
            select id, label, url, events, state, created_at from webhook
            where member_id = :member order by created_at"""));
  }

  @Override
  public String erasing(Choice choice) {
    return ERASING;
  }
}
