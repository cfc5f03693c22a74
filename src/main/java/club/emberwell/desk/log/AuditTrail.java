package club.emberwell.desk.log;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.listing.Csv;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UtcTime;
import club.emberwell.remark.EntryRefused;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.Writer;
import java.util.List;

/** Who did what, when and why: looked through by page, or written out whole in small portions. */
@ApplicationScoped
public class AuditTrail {
  private static final ListOrder LINES = ListOrder.newestFirst("audit", DeskLimits.AUDIT_PAGE);

  private static final List<String> HEAD =
      List.of("seq", "at", "by", "action", "kind", "id", "reason", "detail");

  private final AuditTrailRepository lines;
  private final ObjectMapper json;

  AuditTrail(AuditTrailRepository lines, ObjectMapper json) {
    this.lines = lines;
    this.json = json;
  }

  /** The format of an export. */
  public enum Format {
    CSV,
    JSON_LINES
  }

  /**
   * Lines before a number, newest first; one statement.
   *
   * @param before sequence number of the last line seen; null = from the newest
   * @throws EntryRefused for a filter at fault
   */
  @Transactional
  public Slice<AuditLine> page(Actor actor, AuditFilter filter, Part part) {
    DeskAccess.moderates(actor);
    AuditFilter wanted = filter.checked();
    return Slice.read(
        part,
        LINES,
        place -> lines.before(wanted, place.number(0), place.most()),
        line -> List.of(line.seq()));
  }

  /** Refuses an export that cannot be made, before anything is written. */
  public AuditFilter exportable(Actor actor, AuditFilter filter) {
    DeskAccess.moderates(actor);
    return filter.checked();
  }

  /** Writes all matching lines, newest first, {@link DeskLimits#AUDIT_BATCH} at a time. */
  public void export(AuditFilter filter, Format format, Writer out) throws IOException {
    if (format == Format.CSV) {
      Csv.line(out, HEAD);
    }
    long before = Long.MAX_VALUE;
    List<AuditLine> batch;
    do {
      long from = before;
      batch =
          QuarkusTransaction.requiringNew()
              .call(() -> lines.before(filter, from, DeskLimits.AUDIT_BATCH));
      for (AuditLine line : batch) {
        if (format == Format.CSV) {
          Csv.line(out, cells(line));
        } else {
          out.write(object(line));
        }
        before = line.seq();
      }
    } while (batch.size() == DeskLimits.AUDIT_BATCH);
    out.flush();
  }

  private static List<Object> cells(AuditLine line) {
    return List.of(
        line.seq(),
        UtcTime.of(line.at()),
        line.who(),
        line.action(),
        line.entity(),
        line.entityId(),
        line.reason(),
        line.detail());
  }

  private String object(AuditLine line) {
    ObjectNode node = json.createObjectNode();
    node.put("seq", line.seq());
    node.put("at", UtcTime.of(line.at()));
    node.put("by", line.who());
    node.put("action", line.action());
    node.put("kind", line.entity());
    node.put("id", line.entityId());
    node.put("reason", line.reason());
    try {
      node.set("detail", json.readTree(line.detail()));
      return json.writeValueAsString(node) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
