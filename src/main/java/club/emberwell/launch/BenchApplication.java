package club.emberwell.launch;

import club.emberwell.exchange.bench.BenchCopy;
import club.emberwell.exchange.bench.BenchRestore;
import club.emberwell.exchange.bench.CopyOutcome;
import club.emberwell.exchange.bench.CopyOutcome.Fate;
import club.emberwell.exchange.bench.CopyRefused;
import club.emberwell.member.Actor;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.Members;
import io.quarkus.arc.Unremovable;
import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the application does for {@link MemberBench}: one thing, and no more. */
@Unremovable
@ApplicationScoped
public class BenchApplication implements QuarkusApplication {
  static final String SAVE = "save";
  static final String PREVIEW = "preview";
  static final String RESTORE = "restore";

  private final Members members;
  private final BenchCopy copies;
  private final BenchRestore restore;

  BenchApplication(Members members, BenchCopy copies, BenchRestore restore) {
    this.members = members;
    this.copies = copies;
    this.restore = restore;
  }

  /**
   * @param words what to do, whose bench, and the file
   */
  @Override
  public int run(String... words) throws IOException {
    Optional<Actor> actor =
        members
            .byHandle(words[1])
            .filter(member -> member.status() == MemberStatus.ACTIVE)
            .map(member -> member.actor());
    if (actor.isEmpty()) {
      System.err.println("No active member is called " + words[1] + ".");
      return ExitCode.WRONG_SETTING.number();
    }
    Path file = Path.of(words[2]);
    return words[0].equals(SAVE)
        ? saved(actor.get(), file)
        : restored(actor.get(), file, words[0].equals(PREVIEW));
  }

  private int saved(Actor actor, Path file) throws IOException {
    Files.move(copies.save(actor), file);
    System.out.println(file);
    return ExitCode.STOPPED.number();
  }

  private int restored(Actor actor, Path file, boolean preview) {
    try {
      CopyOutcome outcome = restore.now(actor, file, preview);
      outcome.things().stream()
          .filter(thing -> !thing.notes().isEmpty() || thing.fate() == Fate.BESIDE)
          .forEach(
              thing ->
                  System.out.printf(
                      "%s %s: %s. %s%n",
                      thing.kind().code(),
                      thing.name(),
                      thing.fate().label(),
                      thing.notes().stream()
                          .map(CopyOutcome.Note::toString)
                          .collect(Collectors.joining(" "))));
      outcome.photos().refused().forEach(System.out::println);
      for (Fate fate : Fate.values()) {
        System.out.printf("%s: %d%n", fate.label(), outcome.many(fate));
      }
      System.out.printf("Photos: %d%n", outcome.photos().restored());
      if (outcome.photos().left() > 0) {
        System.out.printf(
            "%d photos are left; say the same again to go on.%n", outcome.photos().left());
      }
      System.out.println(preview ? "Nothing was written." : "Restored.");
      return ExitCode.STOPPED.number();
    } catch (CopyRefused e) {
      System.err.println(e.getMessage());
      return ExitCode.WRONG_SETTING.number();
    }
  }
}
