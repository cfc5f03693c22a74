package club.emberwell.member.club;

import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Licence;
import club.emberwell.member.MemberChecks;
import club.emberwell.member.club.ClubOptions.Card;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.member.club.ClubOptions.Terms;
import club.emberwell.member.session.IdentityLinkRepository;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.SignInProvider;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What owners decide about the club; all of it is logged. */
@ApplicationScoped
public class ClubCare {
  private static final int PHOTO_LEAST = 1;
  private static final int PHOTO_MOST = 100_000;
  private static final int NAME_MAX = 80;
  private static final int LICENCE_MAX = 600;
  private static final int NOTES_MAX = 2000;

  private final ClubOptions club;
  private final SignInProvider provider;
  private final IdentityLinkRepository identities;
  private final Proof proof;
  private final Audit audit;

  ClubCare(
      ClubOptions club,
      SignInProvider provider,
      IdentityLinkRepository identities,
      Proof proof,
      Audit audit) {
    this.club = club;
    this.provider = provider;
    this.identities = identities;
    this.proof = proof;
    this.audit = audit;
  }

  /**
   * What an owner sends; null = wrong.
   *
   * @param door open, request or invitation
   * @param reading public or members
   * @param localSignIn whether names and passwords of this server count
   * @param dataLicence SPDX id for what members post who chose none; null = it stays
   * @param photoMegabytes of pictures that the club keeps for one member; null = it stays
   * @param password the owner's, where who joins, reads or signs in changes; else left out
   */
  @SuppressWarnings("RecordComponentNumber") // as many as the form has fields
  public record Draft(
      String name,
      String door,
      String reading,
      Boolean localSignIn,
      String licence,
      String dataLicence,
      String notes,
      Integer photoMegabytes,
      String password) {}

  /** What the club decided so far, straight from the database. */
  @Transactional
  public Card card() {
    club.forget();
    return club.card();
  }

  /**
   * Replaces the options.
   *
   * @param version that was read
   * @param given what proves the owner, where who joins, reads or signs in changes
   * @throws EntryChanged when another owner was faster
   */
  public Card change(Actor owner, Draft draft, long version, Given given) {
    Remarks.refuse(remarks(owner, draft));
    Card before = card();
    Card after =
        new Card(
            draft.name().strip(),
            Coded.of(Door.class, draft.door()).orElseThrow(),
            "public".equals(draft.reading()),
            draft.localSignIn(),
            new Terms(
                draft.licence().strip(),
                Coded.of(Licence.class, draft.dataLicence()).orElse(before.dataLicence())),
            draft.notes() == null ? "" : draft.notes().strip(),
            draft.photoMegabytes() == null ? before.photoMegabytes() : draft.photoMegabytes(),
            version);
    if (opensOrShuts(before, after)) {
      proof.recent(owner, given);
    }
    QuarkusTransaction.requiringNew().run(() -> store(owner, before, after));
    return card();
  }

  private static boolean opensOrShuts(Card before, Card after) {
    return before.door() != after.door()
        || before.readingPublic() != after.readingPublic()
        || before.localSignIn() != after.localSignIn();
  }

  private void store(Actor owner, Card before, Card after) {
    if (!club.store(after)) {
      throw new EntryChanged((int) before.version());
    }
    audit.record(owner, "change-club", "club", "options", "", difference(before, after));
  }

  private static Map<String, Object> difference(Card before, Card after) {
    Map<String, Object> changed = new LinkedHashMap<>();
    note(changed, "name", before.name(), after.name());
    note(changed, "door", before.door().code(), after.door().code());
    note(changed, "readingPublic", before.readingPublic(), after.readingPublic());
    note(changed, "localSignIn", before.localSignIn(), after.localSignIn());
    note(changed, "licence", before.licence(), after.licence());
    note(changed, "dataLicence", before.dataLicence().code(), after.dataLicence().code());
    note(changed, "notes", before.notes(), after.notes());
    note(changed, "photoMegabytes", before.photoMegabytes(), after.photoMegabytes());
    return changed;
  }

  private static void note(Map<String, Object> changed, String what, Object from, Object to) {
    if (!to.equals(from)) {
      changed.put(what, Map.of("from", from, "to", to));
    }
  }

  private List<Remark> remarks(Actor owner, Draft draft) {
    List<Remark> remarks = new ArrayList<>();
    MemberChecks.text(draft.name(), "/name", 1, NAME_MAX, false, remarks);
    MemberChecks.text(draft.licence(), "/licence", 1, LICENCE_MAX, true, remarks);
    MemberChecks.text(draft.notes(), "/notes", 0, NOTES_MAX, true, remarks);
    if (Coded.of(Door.class, draft.door()).isEmpty()) {
      remarks.add(
          Remark.error(RemarkId.DOOR_UNKNOWN, "/door", "Choose open, request or invitation."));
    }
    if (!"public".equals(draft.reading()) && !"members".equals(draft.reading())) {
      remarks.add(Remark.error(RemarkId.READING_UNKNOWN, "/reading", "Choose public or members."));
    }
    if (draft.dataLicence() != null && Coded.of(Licence.class, draft.dataLicence()).isEmpty()) {
      remarks.add(
          Remark.error(
              RemarkId.LICENCE_UNKNOWN, "/dataLicence", "Choose " + Licence.codes() + "."));
    }
    Integer megabytes = draft.photoMegabytes();
    if (megabytes != null && (megabytes < PHOTO_LEAST || megabytes > PHOTO_MOST)) {
      String detail =
          "Choose %d to %d MB: what is there already stays in any case."
              .formatted(PHOTO_LEAST, PHOTO_MOST);
      remarks.add(Remark.error(RemarkId.OUT_OF_RANGE, "/photoMegabytes", detail));
    }
    if (draft.localSignIn() == null) {
      remarks.add(
          Remark.error(RemarkId.LOCAL_SIGN_IN_MISSING, "/localSignIn", "Choose true or false."));
    } else if (!draft.localSignIn() && !canSignInElsewhere(owner)) {
      remarks.add(
          Remark.error(
              RemarkId.LOCAL_SIGN_IN_NEEDED,
              "/localSignIn",
              "Then nobody could sign in. First set up single sign-on, and sign in with it once"
                  + " yourself."));
    }
    return remarks;
  }

  private boolean canSignInElsewhere(Actor owner) {
    return provider.issuer().isPresent()
        && QuarkusTransaction.requiringNew()
            .call(() -> identities.linked(provider.issuer().get(), owner.memberId()));
  }
}
