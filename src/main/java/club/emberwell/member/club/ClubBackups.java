package club.emberwell.member.club;

import club.emberwell.keep.BackupCause;
import club.emberwell.keep.BackupOverview;
import club.emberwell.keep.BackupWork;
import club.emberwell.keep.Backups;
import club.emberwell.keep.KnownBackup;
import club.emberwell.keep.KnownBackup.ArchiveFile;
import club.emberwell.keep.Trial;
import club.emberwell.member.Actor;
import club.emberwell.member.Audit;
import club.emberwell.member.Role;
import club.emberwell.member.session.Proof;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.remark.ConfirmationNeeded;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** What owners do with backups; all of it is logged. Bringing one back is for the operator. */
@ApplicationScoped
public class ClubBackups {
  private static final String ENTITY = "backup";

  private final Backups backups;
  private final BackupWork work;
  private final Proof proof;
  private final Audit audit;

  ClubBackups(Backups backups, BackupWork work, Proof proof, Audit audit) {
    this.backups = backups;
    this.work = work;
    this.proof = proof;
    this.audit = audit;
  }

  /** How the club stands with backups. */
  public BackupOverview overview(Actor owner) {
    owns(owner);
    return backups.overview();
  }

  /** The same for somebody who may not be told: empty then. */
  public Optional<BackupOverview> overviewFor(Actor actor) {
    return actor.role().atLeast(Role.OWNER) ? Optional.of(backups.overview()) : Optional.empty();
  }

  /** One of them. */
  public KnownBackup get(Actor owner, UUID id) {
    owns(owner);
    return backups.byId(id).orElseThrow(() -> new EntryUnknown(ENTITY));
  }

  /** Begins one in the background; while one is being made it is that one. */
  public KnownBackup make(Actor owner) {
    owns(owner);
    Optional<UUID> mine = work.claim(BackupCause.BY_HAND);
    if (mine.isPresent()) {
      log(owner, "make-backup", mine.get(), Map.of());
      KnownBackup begun = get(owner, mine.get());
      work.begin(mine.get(), BackupCause.BY_HAND);
      return begun;
    }
    BackupOverview all = backups.overview();
    // who made it may have come to an end meanwhile
    return all.running().orElseGet(() -> all.all().get(0));
  }

  /**
   * Begins to try in the background whether one can be brought back.
   *
   * @throws EntryForbidden where it does not lie here, or another one is being tried
   */
  public KnownBackup verify(Actor owner, UUID id) {
    ArchiveFile file = here(get(owner, id));
    if (work.claimTrial(id)) {
      log(owner, "verify-backup", id, Map.of("name", file.name()));
      KnownBackup begun = get(owner, id);
      work.beginTrial(id, file.path());
      return begun;
    }
    KnownBackup now = get(owner, id);
    if (now.trial() == null || now.trial().outcome() != Trial.Outcome.RUNNING) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE, "Another backup is being verified. Try again when it is done.");
    }
    return now;
  }

  /**
   * The file of one, which holds everything.
   *
   * @throws ConfirmationNeeded where the owner did not just prove who they are
   * @throws EntryForbidden where it does not lie here
   */
  public ArchiveFile archive(Actor owner, UUID id, Given given) {
    KnownBackup backup = get(owner, id);
    proof.recent(owner, given);
    ArchiveFile file = here(backup);
    log(owner, "download-backup", id, Map.of("name", file.name()));
    return file;
  }

  private static ArchiveFile here(KnownBackup backup) {
    if (!backup.isKept()) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE,
          backup.failure() == null
              ? "This backup is still being made."
              : "There is no such file: " + backup.failure());
    }
    if (!backup.file().isHere()) {
      throw new EntryForbidden(
          EntryForbidden.Why.STATE,
          "The file is not on this machine. It was last seen on %s as %s."
              .formatted(backup.node(), backup.file().path()));
    }
    return backup.file();
  }

  private void log(Actor owner, String action, UUID id, Map<String, Object> detail) {
    audit.record(owner, action, ENTITY, id.toString(), "", detail);
  }

  private static void owns(Actor actor) {
    if (!actor.role().atLeast(Role.OWNER)) {
      throw new EntryForbidden(EntryForbidden.Why.ROLE, "Only owners can do this.");
    }
  }
}
