package club.emberwell.member.session;

import club.emberwell.member.MemberLimits;
import club.emberwell.remark.Coded;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jboss.logging.Logger;

/**
 * Who came in, was kept out, or left: one line of the log each, by the account's id and never by
 * what was typed, and for some weeks a row that the member sees.
 */
@ApplicationScoped
public class SignIns {
  private static final Logger LOG = Logger.getLogger("emberwell.sign-in");

  private final SignInRepository rows;
  private final SignInLimits limits;

  SignIns(SignInRepository rows, SignInLimits limits) {
    this.rows = rows;
    this.limits = limits;
  }

  /**
   * One of them as the member sees it.
   *
   * @param network from where: 24 bits of an IPv4 address, 64 of an IPv6 one
   * @param label the browser in words, or what the token is for; may be empty
   */
  public record View(Instant at, SignInEvent event, String network, String label) {}

  /** Notes it, committed whatever happens afterwards. */
  public void note(UUID member, SignInEvent event, String addressPrefix, String label) {
    String network = NetworkWords.of(addressPrefix);
    LOG.infof("event=%s member=%s network=%s", event.code(), member, network);
    QuarkusTransaction.requiringNew().run(() -> rows.add(member, event, network, label));
  }

  /** Somebody tried a name that nobody has; it may be a password typed into the wrong field. */
  void unknownName(String addressPrefix) {
    LOG.infof(
        "event=%s member=unknown-name network=%s",
        SignInEvent.WRONG_PASSWORD.code(), NetworkWords.of(addressPrefix));
  }

  /** Notes where a token is used, the first time from there; in the caller's transaction. */
  void tokenUsed(ApiToken token, String addressPrefix) {
    String network = NetworkWords.of(addressPrefix);
    token.lastNetwork = network;
    if (rows.addNetwork(token.id, network)) {
      SignInEvent event = SignInEvent.TOKEN_ELSEWHERE;
      LOG.infof(
          "event=%s member=%s network=%s token=%s",
          event.code(), token.memberId, network, token.id);
      rows.add(token.memberId, event, network, token.label);
    }
  }

  /** The newest of a member. */
  @Transactional
  public List<View> of(UUID member) {
    return rows.of(member, MemberLimits.SIGN_INS_SHOWN).stream()
        .map(
            row ->
                new View(
                    row.at(),
                    Coded.of(SignInEvent.class, row.event()).orElseThrow(),
                    row.network(),
                    row.label()))
        .toList();
  }

  /** Removes what is old. */
  @Scheduled(every = "1h", delayed = "5m")
  @Transactional
  void sweep() {
    rows.forgetBefore(Instant.now().minus(limits.kept()));
  }
}
