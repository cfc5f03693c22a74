package club.emberwell.entry;

import club.emberwell.member.Actor;
import java.time.Instant;
import java.util.UUID;

/**
 * Who made a version of an entry, when and why.
 *
 * @param member null where a rule did, or the server itself
 * @param rule code of the rule, or null
 * @param reason null where none was given
 */
public record Cause(UUID member, String rule, Instant at, String reason) {
  public static Cause of(Actor actor, Instant at) {
    return new Cause(actor.memberId(), null, at, null);
  }

  public static Cause now(Actor actor, String reason) {
    return new Cause(actor.memberId(), null, Instant.now(), reason);
  }

  /** The server itself, by what it knows now. */
  public static Cause itself(String reason) {
    return new Cause(null, null, Instant.now(), reason);
  }

  static Cause ofRule(String code, String reason) {
    return new Cause(null, code, Instant.now(), reason);
  }
}
