package club.emberwell.member.door;

import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Role;
import club.emberwell.member.Secrets;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.door.Admissions.Terms;
import club.emberwell.member.pace.Throttle;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes the club's first owner for whoever can read the server's log. */
@ApplicationScoped
public class FirstOwner {
  static final String THROTTLE = "owner-code-address";
  private static final String FIELD = "/code";

  private final MemberRepository members;
  private final OwnerCodeRepository codes;
  private final Admissions admissions;
  private final Throttle throttle;
  private final DoorLimits limits;
  private final ClubOptions club;

  FirstOwner(
      MemberRepository members,
      OwnerCodeRepository codes,
      Admissions admissions,
      Throttle throttle,
      DoorLimits limits,
      ClubOptions club) {
    this.members = members;
    this.codes = codes;
    this.admissions = admissions;
    this.throttle = throttle;
    this.limits = limits;
    this.club = club;
  }

  /** Whether the club still waits for its first owner. */
  @Transactional
  public boolean wanted() {
    return !members.hasOwner();
  }

  /** Whether there is no account at all. */
  boolean nobodyYet() {
    return QuarkusTransaction.requiringNew().call(() -> members.count() == 0);
  }

  /**
   * The one code that works now, and until when; empty where there is an owner already. It follows
   * from the club's key and that moment, so that every node that starts meanwhile says the same.
   */
  Optional<Issued> issue() {
    return QuarkusTransaction.requiringNew()
        .call(() -> members.hasOwner() ? Optional.empty() : Optional.of(current()));
  }

  /**
   * A code.
   *
   * @param until it works, unless it is used before
   */
  record Issued(String code, Instant until) {}

  private Issued current() {
    codes.holdOthersOff();
    Optional<Issued> known =
        codes.until().map(this::following).filter(issued -> codes.fits(hash(issued.code())));
    return known.orElseGet(
        () -> {
          Issued fresh = following(codes.end(limits.ownerCodeLife()));
          codes.replace(hash(fresh.code()), fresh.until());
          return fresh;
        });
  }

  private Issued following(Instant until) {
    return new Issued(Secrets.code(club.formKey(), "first-owner until " + until), until);
  }

  private static byte[] hash(String code) {
    return Secrets.sha256(Secrets.plain(code));
  }

  /**
   * Makes the owner's account.
   *
   * @param code as logged; dashes, spaces and the case of letters do not count
   */
  public MemberView found(String code, NewMember entry, String addressPrefix) {
    throttle.claim(THROTTLE, addressPrefix, limits.codeAddress());
    byte[] hash = hash(code);
    List<Remark> remarks = new ArrayList<>();
    if (!QuarkusTransaction.requiringNew().call(() -> codes.fits(hash))) {
      remarks.add(wrong());
    }
    Terms terms =
        new Terms(
            Role.OWNER,
            MemberStatus.ACTIVE,
            "found-club",
            Map.of(),
            () -> !members.hasOwner() && codes.take(hash) ? Optional.empty() : Optional.of(wrong()),
            member -> {});
    return admissions.join(entry, addressPrefix, terms, remarks);
  }

  private static Remark wrong() {
    return Remark.error(
        RemarkId.CODE_WRONG,
        FIELD,
        "This is not the code in the server's log, or it has ended: start the server again.");
  }
}
