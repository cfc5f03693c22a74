package club.emberwell.recipe;

import club.emberwell.bench.LaserColumns;
import club.emberwell.bench.StoredJson;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryPart;
import club.emberwell.entry.Words;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import jakarta.persistence.Column;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.annotations.ColumnTransformer;

/** What a recipe has of its own. */
@Entity
@Table(name = "recipe")
class RecipeEntity extends EntryPart {
  @Convert(converter = WrittenRecipeConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenRecipe written;

  @Column(name = "asked_hash", updatable = false)
  private String askedHash;

  @Column(name = "number_style")
  private NumberStyle numberStyle;

  private String folder;

  private String words;

  @Column(name = "machine_id")
  private UUID machineId;

  @Embedded private LaserColumns laser;

  @Column(name = "used_at")
  private Instant usedAt;

  protected RecipeEntity() {}

  /**
   * @param asked hash of the words it came in with
   */
  RecipeEntity(EntryEntity entry, String asked) {
    super(entry);
    askedHash = asked;
  }

  /** Takes what may be stored. */
  final void take(RecipeReader.Read read, NumberStyle style) {
    written = read.written();
    numberStyle = style;
    folder = written.folder();
    machineId = written.machine();
    laser = LaserColumns.of(read.interpretation().laser());
    words = searched(read);
  }

  /** What lists call it and its revisions keep. */
  static Words words(RecipeReader.Read read) {
    return new Words(
        read.title(), StoredJson.write(read.written()), StoredJson.write(read.interpretation()));
  }

  /** Words as they were typed, and as the club calls what they mean. */
  private static String searched(RecipeReader.Read read) {
    List<String> said = new ArrayList<>();
    said.add(read.title());
    said.add(read.written().folder());
    said.add(read.interpretation().work().process().label());
    for (WorkProperty property : WorkProperty.values()) {
      if (property.value().shape() != Shape.QUANTITY) {
        said.add(read.interpretation().work().typed(property));
      }
    }
    Stream<String> filed =
        WorkProperty.of(Shape.WORD).stream()
            .map(property -> read.interpretation().work().word(property).slug())
            .filter(Objects::nonNull)
            .map(slug -> slug.replace('-', ' '));
    return Stream.concat(said.stream().filter(Objects::nonNull), filed)
        .collect(Collectors.joining(" "))
        .toLowerCase(Locale.ROOT);
  }

  /** It was used; the database keeps microseconds. */
  void used(Instant at) {
    usedAt = at.truncatedTo(ChronoUnit.MICROS);
  }

  String askedHash() {
    return askedHash;
  }

  WrittenRecipe written() {
    return written;
  }

  UUID machineId() {
    return machineId;
  }

  Laser laser() {
    return laser.toLaser();
  }

  NumberStyle numberStyle() {
    return numberStyle;
  }

  Recipe toRecipe(String handle, RecipeReader reader) {
    return new Recipe(
        entry().toEntry(handle),
        written,
        numberStyle,
        reader.interpret(written, laser(), numberStyle),
        usedAt);
  }
}
