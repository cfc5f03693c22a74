package club.emberwell.api.desk;

import club.emberwell.desk.AuditFilter;
import club.emberwell.desk.AuditTrail;
import club.emberwell.desk.AuditTrail.Format;
import club.emberwell.member.Actor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;

/** The log as a file, written while it is read: its size costs no memory. */
@ApplicationScoped
public class AuditExport {
  private final AuditTrail trail;

  AuditExport(AuditTrail trail) {
    this.trail = trail;
  }

  public Response answer(Actor actor, AuditFilter filter, Format format) {
    AuditFilter checked = trail.exportable(actor, filter);
    boolean csv = format == Format.CSV;
    StreamingOutput lines =
        out ->
            trail.export(
                checked,
                format,
                new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)));
    return Response.ok(lines, csv ? "text/csv;charset=UTF-8" : "application/jsonl")
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            "attachment; filename=\"log." + (csv ? "csv" : "jsonl") + "\"")
        .build();
  }
}
