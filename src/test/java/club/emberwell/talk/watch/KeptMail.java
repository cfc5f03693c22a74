package club.emberwell.talk.watch;

import club.emberwell.member.Actor;
import io.quarkus.arc.profile.IfBuildProfile;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Alternative;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;

/** Keeps mails for tests to read. */
@Alternative
@Priority(1)
@IfBuildProfile("test")
@ApplicationScoped
public class KeptMail implements WatchMail {
  private final List<Sent> sent = new CopyOnWriteArrayList<>();

  /** A queued mail. */
  record Sent(UUID member, String subject, String text) {}

  @Override
  public boolean enabled() {
    return true;
  }

  @Override
  public boolean queue(UUID member, String subject, String text) {
    return sent.add(new Sent(member, subject, text));
  }

  @Override
  public boolean queueDigest(UUID member, String subject, String text) {
    return queue(member, subject, text);
  }

  List<Sent> of(Actor actor) {
    return sent.stream().filter(mail -> mail.member().equals(actor.memberId())).toList();
  }
}
