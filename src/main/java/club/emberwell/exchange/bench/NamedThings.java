package club.emberwell.exchange.bench;

import club.emberwell.exchange.bench.KnownIdsRepository.Known;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Leads what words name to where it is on this server. What is not here, or is somebody else's and
 * private, is named no more, and that is said.
 */
final class NamedThings {
  private static final String REPORT = "report";

  private final UUID member;

  /** Things of the copy under their ids here; by a kind and the id in the copy. */
  private final Map<String, UUID> here = new HashMap<>();

  /** Of these the ones that were taken off the bench. */
  private final Map<UUID, Boolean> live = new HashMap<>();

  NamedThings(UUID member) {
    this.member = member;
  }

  void put(BenchKind kind, UUID was, UUID is, boolean stands) {
    here.put(kind.code() + was, is);
    live.put(is, stands);
  }

  /** Every id that a line's words name. */
  static List<UUID> ids(BenchLine line) {
    List<UUID> all = new ArrayList<>();
    for (ObjectNode words : line.words()) {
      for (BenchKind.Ref ref : line.kind().refs()) {
        for (JsonNode one :
            ref.many() ? words.at(ref.pointer()) : List.of(words.at(ref.pointer()))) {
          uuid(one, all);
        }
      }
    }
    uuid(line.json().at("/results/report"), all);
    line.json().path("reports").forEach(one -> uuid(one.path(REPORT), all));
    return all;
  }

  private static void uuid(JsonNode said, List<UUID> all) {
    try {
      if (said.isTextual()) {
        all.add(UUID.fromString(said.asText()));
      }
    } catch (IllegalArgumentException e) {
      // no id: it leads nowhere, and is dropped where it stands
    }
  }

  /**
   * Leads all that a line names.
   *
   * @param known what is on this server of {@link #ids}
   * @return sentences about what is not here
   */
  List<String> lead(BenchLine line, Map<UUID, Known> known) {
    List<String> missing = new ArrayList<>();
    for (BenchKind.Ref ref : line.kind().refs()) {
      boolean newest = true;
      for (ObjectNode words : line.words()) {
        lead(words, ref, known, newest ? missing : new ArrayList<>());
        newest = false;
      }
    }
    return missing;
  }

  private void lead(
      ObjectNode words, BenchKind.Ref ref, Map<UUID, Known> known, List<String> missing) {
    int slash = ref.pointer().lastIndexOf('/');
    JsonNode parent = words.at(ref.pointer().substring(0, slash));
    String field = ref.pointer().substring(slash + 1);
    if (!(parent instanceof ObjectNode object) || !object.hasNonNull(field)) {
      return;
    }
    if (ref.many()) {
      ArrayNode all = CopyJson.MAPPER.createArrayNode();
      for (JsonNode one : object.get(field)) {
        UUID is = is(ref, one, known, true);
        if (is == null) {
          missing.add(gone(ref, one));
        } else {
          all.add(is.toString());
        }
      }
      object.set(field, all);
      return;
    }
    UUID is = is(ref, object.get(field), known, false);
    if (is == null) {
      missing.add(gone(ref, object.get(field)));
      object.remove(field);
    } else {
      object.set(field, TextNode.valueOf(is.toString()));
    }
  }

  private static String gone(BenchKind.Ref ref, JsonNode id) {
    return "The %s it names is not here (%s)."
        .formatted(ref.to().equals("grid") ? "test grid" : ref.to(), short36(id.asText()));
  }

  private static String short36(String id) {
    return id.substring(0, Math.min(36, id.length()));
  }

  /** Null where it is not here, or must not be known. */
  private UUID is(BenchKind.Ref ref, JsonNode said, Map<UUID, Known> known, boolean standing) {
    List<UUID> read = new ArrayList<>();
    uuid(said, read);
    if (read.isEmpty()) {
      return null;
    }
    UUID moved = here.get(ref.to() + read.get(0));
    if (moved != null) {
      return standing && !live.get(moved) ? null : moved;
    }
    Known there = known.get(read.get(0));
    boolean fits =
        there != null && there.kind().equals(ref.to()) && (isOwn(there) || isShown(there));
    return fits && (!standing || there.live()) ? there.id() : null;
  }

  private boolean isOwn(Known there) {
    return there.member().equals(member);
  }

  private static boolean isShown(Known there) {
    return there.kind().equals(REPORT) && there.live();
  }

  /** A report of the member's that is here. */
  boolean isOwnReport(UUID id, Map<UUID, Known> known) {
    Known there = known.get(id);
    return there != null && there.kind().equals(REPORT) && isOwn(there);
  }
}
