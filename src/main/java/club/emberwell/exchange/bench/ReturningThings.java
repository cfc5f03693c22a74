package club.emberwell.exchange.bench;

import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.bench.StoredJson;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.entry.ComesBack;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.Returned;
import club.emberwell.exchange.bench.CopyOutcome.Fate;
import club.emberwell.exchange.bench.CopyOutcome.Note;
import club.emberwell.exchange.bench.CopyOutcome.Thing;
import club.emberwell.exchange.bench.KnownIdsRepository.Known;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.tag.TagCode;
import club.emberwell.tag.Tags;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;

/** Brings the things of a copy back onto a bench, each by the service of its kind. */
@ApplicationScoped
class ReturningThings {
  private static final TypeReference<WrittenMachine> MACHINE = new TypeReference<>() {};

  /** Lines whose ids are looked up by one statement. */
  private static final int TOGETHER = 50;

  private static final int LONGEST_NAME = 80;

  private final BenchLines bench;
  private final KnownIdsRepository ids;
  private final Machines machines;
  private final Tags tags;
  private final Map<EntryKind, ComesBack> services;

  ReturningThings(
      BenchLines bench,
      KnownIdsRepository ids,
      Machines machines,
      Tags tags,
      @All List<ComesBack> services) {
    this.bench = bench;
    this.ids = ids;
    this.machines = machines;
    this.tags = tags;
    this.services =
        services.stream().collect(Collectors.toMap(ComesBack::returning, Function.identity()));
  }

  /**
   * A picture of a thing that stands.
   *
   * @param id under which the thing is here
   */
  record Picture(BenchKind kind, UUID id, String name, String file, List<Double> corners) {}

  Returning begin(Actor actor, UUID member, CopyFile copy) {
    return new Returning(actor, member, copy);
  }

  /** One copy on its way back. */
  final class Returning {
    private final Actor actor;
    private final UUID member;
    private final CopyFile copy;
    private final NamedThings named;
    private final List<Thing> done = new ArrayList<>();
    private final List<Picture> pictures = new ArrayList<>();
    private final Set<UUID> seen = new HashSet<>();

    private Returning(Actor actor, UUID member, CopyFile copy) {
      this.actor = actor;
      this.member = member;
      this.copy = copy;
      named = new NamedThings(member);
    }

    List<Thing> done() {
      return done;
    }

    List<Picture> pictures() {
      return pictures;
    }

    /** All of them, in the caller's transaction. */
    void all() {
      for (BenchKind kind : BenchKind.values()) {
        Map<UUID, BenchLine> own = own(kind);
        List<CopyFile.Line> some = new ArrayList<>();
        try {
          copy.each(
              kind,
              line -> {
                some.add(line);
                if (some.size() == TOGETHER) {
                  together(kind, some, own);
                  some.clear();
                }
              });
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
        together(kind, some, own);
      }
    }

    private Map<UUID, BenchLine> own(BenchKind kind) {
      try (Stream<BenchLine> all = bench.of(member, kind)) {
        return all.collect(Collectors.toMap(BenchLine::id, Function.identity()));
      }
    }

    private void together(BenchKind kind, List<CopyFile.Line> some, Map<UUID, BenchLine> own) {
      List<UUID> asked = new ArrayList<>();
      for (CopyFile.Line line : some) {
        if (line.thing() != null) {
          asked.addAll(NamedThings.ids(line.thing()));
          asked.addAll(mayBe(line.thing()));
        }
      }
      Map<UUID, Known> known = asked.isEmpty() ? Map.of() : ids.of(asked);
      for (CopyFile.Line line : some) {
        if (line.thing() == null) {
          refuse(kind, line.number(), null, "(cannot be read)", List.of(Note.of(line.fault())));
        } else {
          one(line.number(), line.thing(), own, known);
        }
      }
      ids.settle();
    }

    /** Ids under which a thing may come back: its own, and those made of it. */
    private List<UUID> mayBe(BenchLine line) {
      UUID mine = made(line.id(), "");
      return List.of(line.id(), mine, made(line.id(), said(line)), made(mine, said(line)));
    }

    /** The same each time, so that nothing comes twice. */
    private UUID made(UUID of, String words) {
      String from = "bench %s %s %s".formatted(member, of, words);
      return UUID.nameUUIDFromBytes(from.getBytes(StandardCharsets.UTF_8));
    }

    private static String said(BenchLine line) {
      // of the line as it came: what it names has other ids elsewhere
      return DigestUtils.sha256Hex(line.said());
    }

    private void one(int number, BenchLine line, Map<UUID, BenchLine> own, Map<UUID, Known> known) {
      UUID was = line.id();
      if (!seen.add(was)) {
        refuse(
            line.kind(),
            number,
            was,
            line.name(),
            List.of(Note.of("This id stands in the copy twice.")));
        return;
      }
      List<UUID> mayBe = mayBe(line);
      boolean foreign = known.containsKey(was) && !own.containsKey(was);
      UUID first = foreign ? mayBe.get(1) : was;
      List<Note> notes = named.lead(line, known).stream().map(Note::of).toList();
      if (!known.containsKey(first)) {
        store(number, line, was, first, Fate.NEW, notes, known);
        return;
      }
      UUID beside = foreign ? mayBe.get(3) : mayBe.get(2);
      BenchLine there = own.get(first);
      if (there == null) {
        refuse(
            line.kind(),
            number,
            was,
            line.name(),
            List.of(Note.of("Its id is taken on this server.")));
      } else if (!line.live() || there.live() && there.written().equals(line.written())) {
        here(number, line, there, notes);
      } else if (own.containsKey(beside)) {
        here(number, line, own.get(beside), notes);
      } else {
        if (there.live()) {
          rename(line);
        }
        store(number, line, was, beside, Fate.BESIDE, notes, known);
      }
    }

    private void here(int number, BenchLine line, BenchLine there, List<Note> notes) {
      named.put(line.kind(), line.id(), there.id(), there.live());
      done.add(
          new Thing(line.kind(), number, line.id(), there.id(), there.name(), Fate.ALIKE, notes));
      if (there.live() && there.picture() == null) {
        picture(line, there.id());
      }
    }

    private void picture(BenchLine line, UUID id) {
      if (line.live() && line.picture() != null && line.kind() != BenchKind.MACHINE) {
        pictures.add(new Picture(line.kind(), id, line.name(), line.picture(), line.corners()));
      }
    }

    private void refuse(BenchKind kind, int line, UUID was, String name, List<Note> why) {
      done.add(new Thing(kind, line, was, null, name, Fate.REFUSED, why));
    }

    /** So that people tell it from the one that is here. */
    private void rename(BenchLine line) {
      String pointer = line.kind().called().orElse(null);
      if (pointer != null) {
        String from = " (copy of %s)".formatted(day(copy.said().savedAt()));
        String name = line.name();
        String kept =
            name.substring(0, Math.min(name.length(), LONGEST_NAME - from.length())).strip();
        line.written().put(pointer.substring(1), kept + from);
        line.json().put("name", kept + from);
      }
    }

    private static String day(String at) {
      return at != null && at.matches("\\d{4}-\\d\\d-\\d\\d.*")
          ? at.substring(0, 10)
          : "another day";
    }

    private void store(
        int number,
        BenchLine line,
        UUID was,
        UUID id,
        Fate fate,
        List<Note> notes,
        Map<UUID, Known> known) {
      try {
        List<Note> all = new ArrayList<>(notes);
        if (line.kind() == BenchKind.MACHINE) {
          machine(line, id);
        } else {
          Returned entry = entry(line, id, known, all);
          services.get(line.kind().entry().orElseThrow()).comeBack(actor, entry);
          label(entry, all);
        }
        named.put(line.kind(), was, id, line.live());
        done.add(new Thing(line.kind(), number, was, id, line.name(), fate, all));
        picture(line, id);
      } catch (EntryRefused e) {
        List<Note> why = e.remarks().stream().map(Note::of).toList();
        refuse(
            line.kind(),
            number,
            was,
            line.name(),
            Stream.concat(notes.stream(), why.stream()).toList());
      } catch (BenchLine.Unreadable e) {
        refuse(line.kind(), number, was, line.name(), List.of(Note.of(e.getMessage())));
      }
    }

    private void machine(BenchLine line, UUID id) {
      Instant updated = line.at("updatedAt");
      Machine.Standing standing =
          new Machine.Standing(
              id,
              0,
              member,
              line.version(),
              line.at("createdAt"),
              updated,
              line.live() ? null : updated);
      WrittenMachine written = StoredJson.brought(CopyJson.line(line.written()), MACHINE);
      machines.comeBack(actor, standing, written, line.style());
    }

    private void label(Returned entry, List<Note> notes) {
      String printed = entry.beside().tag();
      if (printed != null) {
        tags.of(entry.id())
            .map(TagCode::text)
            .filter(given -> !given.equals(printed))
            .ifPresent(
                given ->
                    notes.add(
                        Note.of(
                            "The tag of its label is taken here. Its new tag is %s."
                                .formatted(given))));
      }
    }

    private Returned entry(BenchLine line, UUID id, Map<UUID, Known> known, List<Note> notes) {
      UUID results = line.idIfGiven("/results/report");
      if (results != null && !named.isOwnReport(results, known)) {
        notes.add(Note.of("Its results are in a report that is not here. They stay in the copy."));
        results = null;
      }
      return new Returned(
          id,
          line.name(),
          line.at("createdAt"),
          line.at("updatedAt"),
          line.style(),
          CopyJson.line(line.written()),
          line.past(),
          new Returned.Beside(
              line.json().path("tag").asText(null),
              line.atIfGiven("usedAt"),
              results,
              posted(line, known)));
    }

    private List<Returned.Posted> posted(BenchLine line, Map<UUID, Known> known) {
      Map<UUID, Integer> all = new HashMap<>();
      for (JsonNode one : line.json().path("reports")) {
        UUID report = one instanceof ObjectNode ? line.idOf(one, "report") : null;
        if (report != null && named.isOwnReport(report, known) && one.path("version").asInt() > 0) {
          all.put(report, one.path("version").asInt());
        }
      }
      return all.entrySet().stream()
          .map(one -> new Returned.Posted(one.getKey(), one.getValue()))
          .toList();
    }
  }
}
