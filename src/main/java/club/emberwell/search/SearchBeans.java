package club.emberwell.search;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.entry.change.GrowingPause;
import club.emberwell.entry.change.RenewalLimits;
import club.emberwell.report.ReportSource;
import club.emberwell.search.index.IndexFolder;
import club.emberwell.search.index.SearchIndex;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.interceptor.Interceptor;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.lucene.store.FSDirectory;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Puts this node's index together and follows the database while the application runs. */
@ApplicationScoped
class SearchBeans {

  @Produces
  @Singleton
  SearchIndex index(
      @ConfigProperty(name = "emberwell.index.dir") Path folder,
      ChangeLog log,
      ReportSource source,
      CatalogService catalog,
      RenewalLimits limits) {
    IndexFolder home = new IndexFolder(folder, FSDirectory::open);
    GrowingPause pause =
        new GrowingPause(limits.indexesAtOnce(), limits.indexPause(), limits.longestPause());
    return new SearchIndex(home, log, source, catalog::vocabulary, pause);
  }

  @Produces
  @Singleton
  SearchService service(SearchIndex index, ReportSource source, Machines machines) {
    return new SearchService(
        index,
        source,
        (id, actor) ->
            actor.signedIn()
                ? machines.find(actor.memberId(), id).map(Machine::laser)
                : Optional.empty());
  }

  /** After everything else: the index reads with the catalog that was loaded before. */
  void start(
      @Observes @Priority(Interceptor.Priority.LIBRARY_AFTER) StartupEvent event,
      SearchIndex index) {
    index.start();
  }

  /** Before everything else, while the database still answers. */
  void stop(
      @Observes @Priority(Interceptor.Priority.LIBRARY_BEFORE) ShutdownEvent event,
      SearchIndex index) {
    index.stop();
  }
}
