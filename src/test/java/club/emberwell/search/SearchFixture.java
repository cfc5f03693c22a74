package club.emberwell.search;

import static org.awaitility.Awaitility.await;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.change.GrowingPause;
import club.emberwell.laser.Laser;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.index.IndexFolder;
import club.emberwell.search.index.IndexHash;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.search.query.SearchQuery;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.apache.lucene.store.MMapDirectory;

/** An index over a {@link FakeClub} with the words of the shared files. */
public final class SearchFixture implements AutoCloseable {
  public static final Vocabulary WORDS = CatalogFiles.catalog().vocabulary();
  static final Actor STRANGER = new Actor(null, "", Role.READER, UnitPreferences.metric());

  final FakeClub club;
  final Map<UUID, Laser> machines = new HashMap<>();
  final SearchIndex index;
  final SearchService service;
  Vocabulary vocabulary = WORDS;

  SearchFixture(FakeClub club, Path folder, IndexFolder.Opener opener) {
    this.club = club;
    index = new SearchIndex(new IndexFolder(folder, opener), club, club, () -> vocabulary, pause());
    service = new SearchService(index, club, (id, actor) -> Optional.ofNullable(machines.get(id)));
    index.start();
  }

  /** As the settings have it where nobody changes them. */
  static GrowingPause pause() {
    return new GrowingPause(3, Duration.ofSeconds(2), Duration.ofMinutes(5));
  }

  static SearchFixture over(FakeClub club, Path folder) {
    return new SearchFixture(club, folder, MMapDirectory::new);
  }

  /** Waits until the index answers and holds what the club holds. */
  SearchFixture settled() throws InterruptedException {
    eventually(() -> index.status().ready() && index.hash().equals(IndexHash.of(club)));
    return this;
  }

  SearchResult search(SearchQuery query) {
    return service.search(query, STRANGER);
  }

  SearchResult search(String text) {
    return search(SearchQuery.everything().withText(text));
  }

  /** Waits until something holds, at most a minute. */
  static void eventually(BooleanSupplier holds) {
    await()
        .atMost(Duration.ofMinutes(1))
        .pollInterval(Duration.ofMillis(10))
        .until(holds::getAsBoolean);
  }

  @Override
  public void close() {
    index.stop();
  }
}
