package club.emberwell.catalog;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * The data files that clubs share ({@code shared/} of the project, inside the jar under the same
 * name). An error in a file is a programming error: it stops the start with the file's name.
 */
public final class CatalogFiles {
  private static final List<String> TERM_FILES =
      List.of("materials", "coatings", "colours", "defects");

  /**
   * Sources and limits that many cautions share; the files are our own, so none of them is a bomb.
   */
  private static final int MOST_ALIASES = 500;

  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES).build();

  private CatalogFiles() {}

  private record TermFile(TermKind kind, List<TermLine> terms, List<AmbiguousLine> ambiguous) {}

  private record TermLine(
      String slug,
      String label,
      String parent,
      boolean respondsAlike,
      List<String> synonyms,
      String note,
      String hex) {}

  private record AmbiguousLine(String text, List<String> terms) {}

  /**
   * @param sources those that several rules name
   */
  private record RulesFile(List<CautionSource> sources, List<CautionRule> rules) {}

  private record ColoursFile(Map<String, String> names) {}

  private record ThicknessesFile(List<Double> nominal) {}

  /**
   * @param variants word to the word it stands for
   * @param fillers words that say nothing about which material it is
   * @param things words for what may be made of several materials
   */
  private record SpellingsFile(
      Map<String, String> variants, List<String> fillers, Map<String, Thing> things) {}

  /** All terms of the files, in file order; ambiguous spellings are synonyms of each candidate. */
  public static List<Term> terms() {
    List<Term> all = new ArrayList<>();
    TERM_FILES.forEach(name -> all.addAll(terms(name)));
    return all;
  }

  private static Collection<Term> terms(String name) {
    TermFile file = read("vocabulary/" + name + ".yaml", TermFile.class);
    Map<String, List<String>> spellings = new LinkedHashMap<>();
    for (TermLine line : file.terms()) {
      spellings.put(line.slug(), new ArrayList<>(orEmpty(line.synonyms())));
    }
    for (AmbiguousLine line : orEmpty(file.ambiguous())) {
      line.terms().forEach(slug -> spellings.get(slug).add(line.text()));
    }
    return file.terms().stream()
        .map(line -> term(file.kind(), line, spellings.get(line.slug())))
        .toList();
  }

  private static Term term(TermKind kind, TermLine line, List<String> synonyms) {
    return new Term(
        kind,
        line.slug(),
        new Term.Words(line.label(), synonyms, line.note()),
        line.parent(),
        line.respondsAlike(),
        line.hex(),
        Term.Standing.first(Term.SHARED));
  }

  public static List<CautionRule> cautions() {
    return read("hazards/rules.yaml", RulesFile.class).rules();
  }

  public static Folding folding() {
    SpellingsFile file = read("vocabulary/spellings.yaml", SpellingsFile.class);
    return new Folding(file.variants(), file.fillers(), file.things());
  }

  /** The named colours of CSS Color 4: lower-case name to 0xRRGGBB. */
  public static Map<String, Integer> cssColours() {
    Map<String, Integer> colours = new HashMap<>();
    read("vocabulary/css-colours.yaml", ColoursFile.class)
        .names()
        .forEach((name, hex) -> colours.put(name, ColourNaming.rgb(hex).orElseThrow()));
    return colours;
  }

  /** Nominal thicknesses in mm, rising. */
  static List<Double> thicknesses() {
    return read("vocabulary/thicknesses.yaml", ThicknessesFile.class).nominal();
  }

  /** A catalog of the files alone, without any club's changes; version 0. */
  public static Catalog catalog() {
    Vocabulary vocabulary = new Vocabulary(terms(), folding());
    return new Catalog(
        0,
        vocabulary,
        new Cautions(vocabulary, cautions()),
        new ColourNaming(vocabulary, cssColours()));
  }

  private static <T> List<T> orEmpty(List<T> list) {
    return list == null ? List.of() : list;
  }

  private static <T> T read(String name, Class<T> type) {
    return MAPPER.convertValue(tree(name), type);
  }

  /** The plain maps and lists of a file, with its anchors resolved. */
  static Object tree(String name) {
    String resource = "shared/" + name;
    try (InputStream in = CatalogFiles.class.getClassLoader().getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("not in the program: " + resource);
      }
      LoaderOptions options = new LoaderOptions();
      options.setMaxAliasesForCollections(MOST_ALIASES);
      return new Yaml(new SafeConstructor(options)).load(in);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + resource, e);
    }
  }
}
