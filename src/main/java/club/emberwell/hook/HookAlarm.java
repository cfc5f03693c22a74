package club.emberwell.hook;

import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.mail.MailOutbox;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Tells owners by mail, where there is any; the desk says it as long as it is so. */
@ApplicationScoped
class HookAlarm {
  private final Members members;
  private final MailOutbox mail;

  HookAlarm(Members members, MailOutbox mail) {
    this.members = members;
    this.mail = mail;
  }

  /** In the caller's transaction. */
  void switchedOff(UUID webhook, HookState why) {
    String text =
        "%s.\nSee what went wrong, and switch it on again: /desk/club/webhooks/%s"
            .formatted(why.label(), webhook);
    members.inCharge().stream()
        .filter(member -> member.role() == Role.OWNER)
        .forEach(owner -> mail.queue(owner.id(), "webhook", "A webhook is off", text));
  }
}
