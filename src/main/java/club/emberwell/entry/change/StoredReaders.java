package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeLog.Mark;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.entry.change.ChangeRowRepository.Reached;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * Readers whose place is in the database: one node at a time, each run in one transaction with what
 * the reader does about the changes.
 */
@ApplicationScoped
public class StoredReaders {
  private static final int SECONDS = 300;

  private final ChangeRowRepository rows;
  private final HistoryRepository histories;
  private final ChangeLog log;

  StoredReaders(ChangeRowRepository rows, HistoryRepository histories, ChangeLog log) {
    this.rows = rows;
    this.histories = histories;
    this.log = log;
  }

  /**
   * @param name its row in {@code change_reader}
   * @param most rows taken in one run
   */
  public ChangeFollower following(String name, int most, Consumer<List<Change>> work) {
    return new ChangeFollower(log, new Stored(name, most, work));
  }

  private final class Stored implements ChangeReader {
    private final String name;
    private final int most;
    private final Consumer<List<Change>> work;

    Stored(String name, int most, Consumer<List<Change>> work) {
      this.name = name;
      this.most = most;
      this.work = work;
    }

    @Override
    public String name() {
      return name;
    }

    @Override
    public int most() {
      return most;
    }

    @Override
    public boolean next(ChangeLog changes) {
      return QuarkusTransaction.requiringNew()
          .timeout(SECONDS)
          .call(() -> ChangeReader.super.next(changes));
    }

    @Override
    public Optional<Position> place() {
      // before the claim: where a history has to begin, it moves the readers, and waits for claims
      UUID history = log.epoch();
      Reached mark = rows.claim(name).orElse(null);
      if (mark == null) {
        return Optional.empty();
      }
      if (!history.equals(mark.epoch())) {
        if (histories.epoch().equals(history)) {
          // what was posted before there were readers is left alone
          rows.enter(name, history, rows.newest().map(Change::position).orElse(Position.START));
        }
        return Optional.empty();
      }
      return Optional.of(mark.position());
    }

    @Override
    public void take(List<Change> changes) {
      work.accept(changes);
    }

    @Override
    public void reached(Mark place) {
      rows.reached(name, place.position());
    }
  }
}
