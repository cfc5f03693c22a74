package club.emberwell.exchange.open;

import club.emberwell.catalog.Cautions;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.listing.Csv;
import club.emberwell.report.SharedReports;
import club.emberwell.report.StoredReport;
import club.emberwell.search.MatchedTrials;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.SearchQuery;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;

/** All trials of one search, in the columns of the package; written while they are read. */
@ApplicationScoped
public class SearchExport {
  /** Trials in one file; whoever wants more takes the package. */
  public static final int MOST = 20_000;

  private static final int AT_ONCE = 500;

  private final SearchService search;
  private final SharedReports reports;
  private final CatalogService catalog;
  private final ObjectMapper json;

  SearchExport(
      SearchService search, SharedReports reports, CatalogService catalog, ObjectMapper json) {
    this.search = search;
    this.reports = reports;
    this.catalog = catalog;
    this.json = json;
  }

  /** Takes the cells of one trial after the other. */
  private interface Rows {
    void take(List<Object> cells) throws IOException;
  }

  /**
   * What there is to write.
   *
   * @throws club.emberwell.search.index.IndexNotReady while there is no index
   */
  public MatchedTrials find(SearchQuery query) {
    return search.trials(query, MOST);
  }

  /** Writes a table. */
  public void csv(MatchedTrials found, OutputStream out) throws IOException {
    Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    Csv.line(writer, TrialTable.HEAD);
    each(found, cells -> Csv.line(writer, cells));
    writer.flush();
  }

  /** Writes {@code {"total": …, "items": […]}}, a trial as an object by its columns. */
  public void json(MatchedTrials found, OutputStream out) throws IOException {
    try (JsonGenerator object = json.createGenerator(out)) {
      object.writeStartObject();
      object.writeNumberField("total", found.total());
      object.writeArrayFieldStart("items");
      each(
          found,
          cells -> {
            object.writeStartObject();
            for (int i = 0; i < cells.size(); i++) {
              if (cells.get(i) != null) {
                object.writeObjectField(TrialTable.HEAD.get(i), cells.get(i));
              }
            }
            object.writeEndObject();
          });
      object.writeEndArray();
      object.writeEndObject();
    }
  }

  private void each(MatchedTrials found, Rows rows) throws IOException {
    Ordinals ordinals = new Ordinals();
    Cautions cautions = catalog.cautions();
    List<Long> numbers = List.copyOf(found.places().keySet());
    for (int from = 0; from < numbers.size(); from += AT_ONCE) {
      List<Long> some = numbers.subList(from, Math.min(numbers.size(), from + AT_ONCE));
      List<StoredReport> read = QuarkusTransaction.requiringNew().call(() -> reports.live(some));
      for (StoredReport report : read) {
        Set<Integer> places = found.places().get(report.snapshot().number());
        for (int place : places) {
          // a report may have fewer trials by now
          if (place < report.snapshot().trials().size()) {
            rows.take(TrialTable.cells(new TrialRow(report, place, ordinals, cautions)));
          }
        }
      }
    }
  }
}
