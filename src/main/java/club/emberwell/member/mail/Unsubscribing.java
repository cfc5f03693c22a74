package club.emberwell.member.mail;

import club.emberwell.member.club.ClubOptions;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.UUID;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Ends letters by their own link, without a sign-in (RFC 8058). The link is signed and never runs
 * out: whoever finds an old letter can still end what it is about, and nothing else.
 */
@ApplicationScoped
public class Unsubscribing {
  /** Of the path, between its slash and the signed part. */
  public static final String PATH = "/unsubscribe/";

  private static final int LONGEST = 200;

  private final ClubOptions club;
  private final MailOutboxRepository rows;
  private final Event<Unsubscribed> told;
  private final String publicUrl;

  Unsubscribing(
      ClubOptions club,
      MailOutboxRepository rows,
      Event<Unsubscribed> told,
      @ConfigProperty(name = "emberwell.public-url") String publicUrl) {
    this.club = club;
    this.rows = rows;
    this.told = told;
    this.publicUrl = publicUrl;
  }

  /** A member wants no more letters of a kind; whoever sends them stops in this transaction. */
  public record Unsubscribed(UUID member, LetterKind kind) {}

  /** Where a member ends letters of a kind. */
  public String link(UUID member, LetterKind kind) {
    String what = kind.code() + "." + member;
    return publicUrl + PATH + what + "." + signature(what);
  }

  /** What a link ends; empty for one that was not made here. */
  public Optional<Unsubscribed> read(String link) {
    String[] parts = link.length() > LONGEST ? new String[0] : link.split("\\.");
    if (parts.length != 3 || !signature(parts[0] + "." + parts[1]).equals(parts[2])) {
      return Optional.empty();
    }
    return Coded.of(LetterKind.class, parts[0])
        .map(kind -> new Unsubscribed(UUID.fromString(parts[1]), kind));
  }

  /** Ends the letters, those that wait to be sent too; false where the link ends nothing. */
  @Transactional
  public boolean end(String link) {
    Optional<Unsubscribed> ended = read(link);
    ended.ifPresent(
        who -> {
          rows.drop(who.member(), who.kind().code());
          told.fire(who);
        });
    return ended.isPresent();
  }

  private String signature(String what) {
    // the word before keeps these apart from what else is signed by the same key
    return new HmacUtils(
            HmacAlgorithms.HMAC_SHA_256, club.formKey().getBytes(StandardCharsets.US_ASCII))
        .hmacHex("unsubscribe " + what);
  }
}
