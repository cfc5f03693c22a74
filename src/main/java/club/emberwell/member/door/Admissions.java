package club.emberwell.member.door;

import club.emberwell.member.Audit;
import club.emberwell.member.Member;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.MemberRepository;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Addresses;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.pace.Throttle;
import club.emberwell.member.session.Passwords;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PersistenceException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.hibernate.exception.ConstraintViolationException;

/** Stores new accounts, whichever door they come through: the same checks for all. */
@ApplicationScoped
public class Admissions {
  private static final String SIGN_UP_ADDRESS = "sign-up-address";

  private final NewClub club;
  private final ClubOptions options;
  private final MemberRepository members;
  private final MemberChecks checks;
  private final Passwords passwords;
  private final Addresses addresses;
  private final Throttle throttle;
  private final DoorLimits limits;
  private final Audit audit;

  @SuppressWarnings("ParameterNumber") // each is one of its neighbours
  Admissions(
      NewClub club,
      ClubOptions options,
      MemberRepository members,
      MemberChecks checks,
      Passwords passwords,
      Addresses addresses,
      Throttle throttle,
      DoorLimits limits,
      Audit audit) {
    this.club = club;
    this.options = options;
    this.members = members;
    this.addresses = addresses;
    this.throttle = throttle;
    this.limits = limits;
    this.checks = checks;
    this.passwords = passwords;
    this.audit = audit;
  }

  /**
   * On which terms somebody comes in.
   *
   * @param action what the log calls it
   * @param detail what else the log keeps
   * @param gate asked in the same transaction once name and address are free; what it takes (a use
   *     of an invitation) stays taken exactly if the account is stored
   * @param after what else belongs into the transaction
   */
  public record Terms(
      Role role,
      MemberStatus status,
      String action,
      Map<String, Object> detail,
      Supplier<Optional<Remark>> gate,
      Consumer<Member> after) {
    /** A plain member through an open door. */
    public static Terms of(Role role) {
      return new Terms(role, MemberStatus.ACTIVE, "join", Map.of(), Optional::empty, member -> {});
    }
  }

  /**
   * Signs a stranger up on some terms, throttled by address.
   *
   * @param more what is wrong besides, at fields of the door itself
   */
  MemberView join(NewMember entry, String addressPrefix, Terms terms, List<Remark> more) {
    NewMember normal = entry.normal();
    List<Remark> remarks = new ArrayList<>(remarks(normal));
    remarks.addAll(checks.chosenName(normal.handle(), options.clubName()));
    remarks.addAll(more);
    Remarks.refuse(remarks);
    throttle.claim(SIGN_UP_ADDRESS, addressPrefix, limits.signUpAddress());
    return admit(normal, terms);
  }

  /** Adds a member from the club's own side: same checks, but neither door nor throttle. */
  MemberView enrol(NewMember entry, Role role) {
    NewMember normal = entry.normal();
    Remarks.refuse(remarks(normal));
    return admit(normal, Terms.of(role));
  }

  private List<Remark> remarks(NewMember entry) {
    List<Remark> remarks = checks.newMember(entry.handle(), entry.email());
    passwords.check(entry.password(), "/password", entry.handle()).ifPresent(remarks::add);
    return remarks;
  }

  /** The same for somebody whom the sign-in provider vouches for. */
  public List<Remark> remarksWithoutPassword(String handle, String email) {
    List<Remark> remarks = checks.newMember(handle, email);
    remarks.addAll(checks.chosenName(handle, options.clubName()));
    return remarks;
  }

  private MemberView admit(NewMember entry, Terms terms) {
    // hashed before the transaction: no connection is held while people queue for a thread
    return store(entry, passwords.hash(entry.password()), terms);
  }

  /** Stores somebody who signs in elsewhere and has no password here. */
  public MemberView admitWithoutPassword(NewMember entry, Terms terms) {
    return store(entry, null, terms);
  }

  private MemberView store(NewMember entry, String hash, Terms terms) {
    try {
      MemberView made = QuarkusTransaction.requiringNew().call(() -> insert(entry, hash, terms));
      club.entered();
      return made;
    } catch (PersistenceException e) {
      if (e instanceof ConstraintViolationException clash) {
        throw taken(clash);
      }
      throw e;
    }
  }

  private MemberView insert(NewMember entry, String hash, Terms terms) {
    List<Remark> remarks = new ArrayList<>();
    if (members.byHandle(entry.handle()).isPresent()) {
      remarks.add(handleTaken());
    } else if (members.looksTaken(entry.handle())) {
      remarks.add(
          Remark.error(
              RemarkId.HANDLE_ALIKE,
              "/handle",
              "This looks too much like the name of another member. Choose another."));
    }
    boolean mail = entry.email() != null && !entry.email().isEmpty();
    if (mail && members.emailTaken(entry.email(), null)) {
      remarks.add(MemberChecks.emailTaken());
    }
    if (remarks.isEmpty()) {
      terms.gate().get().ifPresent(remarks::add);
    }
    Remarks.refuse(remarks);
    Member member = new Member();
    member.id = UUID.randomUUID();
    member.handle = entry.handle();
    member.email = mail ? entry.email() : null;
    member.passwordHash = hash;
    member.role = terms.role();
    member.status = terms.status();
    member.createdAt = Instant.now();
    members.persistAndFlush(member);
    terms.after().accept(member);
    addresses.sendLink(member);
    audit.record(
        Members.view(member).actor(),
        terms.action(),
        "member",
        member.id.toString(),
        "",
        terms.detail());
    return Members.view(member);
  }

  private static EntryRefused taken(ConstraintViolationException clash) {
    String name = String.valueOf(clash.getConstraintName());
    return new EntryRefused(name.contains("email") ? MemberChecks.emailTaken() : handleTaken());
  }

  private static Remark handleTaken() {
    return Remark.error(RemarkId.HANDLE_TAKEN, "/handle", "Somebody here already has this name.");
  }
}
