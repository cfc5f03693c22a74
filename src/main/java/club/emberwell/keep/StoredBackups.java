package club.emberwell.keep;

import club.emberwell.keep.KnownBackup.ArchiveFile;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.hibernate.Session;

/** The backups all nodes know of, and whose turn it is to make or to try one. */
@ApplicationScoped
class StoredBackups {
  /** Who has not said for so long that it goes on has died. */
  static final Duration SILENCE = Duration.ofMinutes(2);

  /** What no node has seen for so long is gone with its node. */
  private static final Duration UNSEEN = Duration.ofDays(30);

  /** One that fails again each hour fills no list. */
  private static final Duration PAST = Duration.ofDays(1);

  static final String DIED = "The server stopped while it was being made.";
  private static final String TRIAL_DIED = "The server stopped while it was being verified.";

  private final Session db;

  StoredBackups(Session db) {
    this.db = db;
  }

  /** All of them, newest first. */
  List<KnownBackup> all() {
    return db.createNativeQuery(
            """
            select id, cause, state, node, started_at, ended_at, until, failure, name, path,
              size_bytes, made_at, program, tables, seen_at, trial, tried_at, trial_until, trial_says
            from backup order by coalesce(made_at, started_at) desc, id
            """,
            Tuple.class)
        .getResultStream()
        .map(StoredBackups::backup)
        .toList();
  }

  /** Takes the turn to make one; false while it is somebody else's. */
  boolean begin(UUID id, BackupCause cause, String node) {
    Instant now = Instant.now();
    db.createNativeMutationQuery(
            """
            update backup set state = 'died', ended_at = until, until = null, failure = :died
            where state = 'running' and until < :now
            """)
        .setParameter("died", DIED)
        .setParameter("now", now)
        .executeUpdate();
    return db.createNativeMutationQuery(
                """
                insert into backup (id, cause, state, node, started_at, until)
                values (:id, :cause, 'running', :node, :now, :until)
                on conflict do nothing
                """)
            .setParameter("id", id)
            .setParameter("cause", cause.code())
            .setParameter("node", node)
            .setParameter("now", now)
            .setParameter("until", now.plus(SILENCE))
            .executeUpdate()
        == 1;
  }

  /** Says that what was begun goes on. */
  void goesOn(UUID id) {
    db.createNativeMutationQuery(
            """
            update backup
               set until = case when state = 'running' then cast(:until as timestamptz) end,
                   trial_until = case when trial = 'running' then cast(:until as timestamptz) end
             where id = :id and (state = 'running' or trial = 'running')
            """)
        .setParameter("until", Instant.now().plus(SILENCE), Instant.class)
        .setParameter("id", id)
        .executeUpdate();
  }

  /** It lies there. Where it was taken for dead meanwhile, it is found with the next look. */
  void kept(UUID id, ArchiveFile file) {
    // made within the second of another: its file took the place of that
    db.createNativeMutationQuery("delete from backup where name = :name and id <> :id")
        .setParameter("name", file.name())
        .setParameter("id", id)
        .executeUpdate();
    db.createNativeMutationQuery(
            """
            update backup
               set state = 'kept', ended_at = :seen, until = null, name = :name, path = :path,
                   size_bytes = :bytes, made_at = :made, program = :program, tables = :tables,
                   seen_at = :seen
             where id = :id and state = 'running'
            """)
        .setParameter("name", file.name())
        .setParameter("path", file.path().toString())
        .setParameter("bytes", file.bytes())
        .setParameter("made", file.madeAt())
        .setParameter("program", file.program())
        .setParameter("tables", file.tables())
        .setParameter("seen", file.seenAt())
        .setParameter("id", id)
        .executeUpdate();
  }

  /** There is none. */
  void over(UUID id, BackupState state, String why) {
    db.createNativeMutationQuery(
            """
            update backup set state = :state, ended_at = :now, until = null, failure = :why
            where id = :id and state = 'running'
            """)
        .setParameter("state", state.code())
        .setParameter("now", Instant.now())
        .setParameter("why", why)
        .setParameter("id", id)
        .executeUpdate();
  }

  /** Takes the turn to try one; false while one is tried. */
  boolean beginTrial(UUID id) {
    Instant now = Instant.now();
    // or two begin at once, and one of them meets the index
    db.createNativeMutationQuery("lock table backup in share row exclusive mode").executeUpdate();
    db.createNativeMutationQuery(
            """
            update backup
               set trial = 'failed', tried_at = trial_until, trial_until = null, trial_says = :died
             where trial = 'running' and trial_until < :now
            """)
        .setParameter("died", TRIAL_DIED)
        .setParameter("now", now)
        .executeUpdate();
    return db.createNativeMutationQuery(
                """
                update backup
                   set trial = 'running', tried_at = :now, trial_until = :until, trial_says = null
                 where id = :id and state = 'kept'
                   and not exists (select from backup where trial = 'running')
                """)
            .setParameter("now", now)
            .setParameter("until", now.plus(SILENCE))
            .setParameter("id", id)
            .executeUpdate()
        == 1;
  }

  /** What came of trying one. */
  void tried(UUID id, Trial trial) {
    db.createNativeMutationQuery(
            """
            update backup
               set trial = :trial, tried_at = :at, trial_until = null,
                   trial_says = cast(:says as text)
             where id = :id and trial = 'running'
            """)
        .setParameter("trial", trial.outcome().code())
        .setParameter("at", trial.at())
        .setParameter("says", trial.says(), String.class)
        .setParameter("id", id)
        .executeUpdate();
  }

  /** Of these names, those that are known. */
  Set<String> known(Collection<String> names) {
    return Set.copyOf(
        db.createNativeQuery("select name from backup where name in (:names)", String.class)
            .setParameterList("names", names)
            .getResultList());
  }

  /** A file that was found. */
  void found(BackupCause cause, String node, ArchiveFile file) {
    db.createNativeMutationQuery(
            """
            insert into backup (id, cause, state, node, started_at, ended_at, name, path,
              size_bytes, made_at, program, tables, seen_at)
            values (:id, :cause, 'kept', :node, :made, :made, :name, :path, :bytes, :made,
              :program, :tables, :seen)
            on conflict do nothing
            """)
        .setParameter("id", UUID.randomUUID())
        .setParameter("cause", cause.code())
        .setParameter("node", node)
        .setParameter("name", file.name())
        .setParameter("path", file.path().toString())
        .setParameter("bytes", file.bytes())
        .setParameter("made", file.madeAt())
        .setParameter("program", file.program())
        .setParameter("tables", file.tables())
        .setParameter("seen", file.seenAt())
        .executeUpdate();
  }

  /** Files that are still there; one of another size than it was is damaged. */
  void seen(String node, String[] names, String[] paths, Long[] sizes, Instant now) {
    db.createNativeMutationQuery(
            """
            update backup b
               set seen_at = :now, node = :node, path = f.path,
                   trial = case when f.bytes = b.size_bytes then b.trial else 'damaged' end,
                   tried_at = case when f.bytes = b.size_bytes then b.tried_at else :now end,
                   trial_until = case when f.bytes = b.size_bytes then b.trial_until end,
                   trial_says = case when f.bytes = b.size_bytes then b.trial_says
                     else 'The file has another size than when it was made.' end
              from unnest(cast(:names as text[]), cast(:paths as text[]), cast(:sizes as bigint[]))
                as f (name, path, bytes)
             where b.name = f.name
            """)
        .setParameter("now", now)
        .setParameter("node", node)
        .setParameter("names", names, String[].class)
        .setParameter("paths", paths, String[].class)
        .setParameter("sizes", sizes, Long[].class)
        .executeUpdate();
  }

  /**
   * Forgets files of this node that are gone, those that no node has seen for long, and old
   * failures.
   *
   * @param below the folder of this node
   */
  void forget(String node, Path below, Instant now) {
    db.createNativeMutationQuery(
            """
            delete from backup
             where state = 'kept' and seen_at < :now
                 and node = :node and starts_with(path, :below)
               or state = 'kept' and seen_at < :unseen
               or state in ('failed', 'died') and ended_at < :past
            """)
        .setParameter("now", now)
        .setParameter("node", node)
        .setParameter("below", below + "/")
        .setParameter("unseen", now.minus(UNSEEN))
        .setParameter("past", now.minus(PAST))
        .executeUpdate();
  }

  private static KnownBackup backup(Tuple row) {
    Instant until = row.get("until", Instant.class);
    boolean dead = until != null && until.isBefore(Instant.now());
    BackupState state = Coded.of(BackupState.class, row.get("state", String.class)).orElseThrow();
    return new KnownBackup(
        row.get("id", UUID.class),
        Coded.of(BackupCause.class, row.get("cause", String.class)).orElseThrow(),
        dead ? BackupState.DIED : state,
        row.get("node", String.class),
        row.get("started_at", Instant.class),
        dead ? until : row.get("ended_at", Instant.class),
        dead ? DIED : row.get("failure", String.class),
        state == BackupState.KEPT ? file(row) : null,
        trial(row).orElse(null));
  }

  private static ArchiveFile file(Tuple row) {
    return new ArchiveFile(
        row.get("name", String.class),
        Path.of(row.get("path", String.class)),
        row.get("size_bytes", Long.class),
        row.get("made_at", Instant.class),
        row.get("program", String.class),
        row.get("tables", Integer.class),
        row.get("seen_at", Instant.class));
  }

  private static Optional<Trial> trial(Tuple row) {
    Instant until = row.get("trial_until", Instant.class);
    if (until != null && until.isBefore(Instant.now())) {
      return Optional.of(new Trial(Trial.Outcome.FAILED, until, TRIAL_DIED));
    }
    return Coded.of(Trial.Outcome.class, String.valueOf(row.get("trial", String.class)))
        .map(
            outcome ->
                new Trial(
                    outcome,
                    row.get("tried_at", Instant.class),
                    row.get("trial_says", String.class)));
  }
}
