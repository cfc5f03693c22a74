package club.emberwell.web.frame;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.ws.rs.core.MultivaluedMap;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What a form said, field by field; empty fields count as not given. */
public final class SentForm {
  /** Name of a button that puts one of the offered readings into its field. */
  private static final String USE = "use:";

  private static final String CONFIRMED = "confirmed";
  private static final String VERSION = "version";

  /** What no entry ever has: it stands for a version that cannot be read. */
  private static final int NO_VERSION = -1;

  private final Map<String, String> typed = new LinkedHashMap<>();
  private final Map<String, String> values = new LinkedHashMap<>();
  private final List<Remark> remarks = new ArrayList<>();
  private final Map<String, List<String>> all;
  private final Map<String, List<Path>> files;
  private final List<String> confirmed;
  private boolean onlyAsked;

  public SentForm(MultivaluedMap<String, String> sent) {
    this((Map<String, List<String>>) sent);
  }

  SentForm(Map<String, List<String>> sent) {
    this(sent, Map.of());
  }

  /**
   * @param files by field, as long as the request lasts
   */
  SentForm(Map<String, List<String>> sent, Map<String, List<Path>> files) {
    all = Map.copyOf(sent);
    this.files = Map.copyOf(files);
    sent.forEach((name, all) -> typed.put(name, all.isEmpty() ? "" : all.get(0)));
    typed.forEach((name, text) -> values.put(name, text.strip()));
    confirmed = List.copyOf(sent.getOrDefault(CONFIRMED, List.of()));
    for (String name : List.copyOf(values.keySet())) {
      if (name.startsWith(USE)) {
        values.put(name.substring(USE.length()), values.get(name));
        onlyAsked = true;
      }
    }
  }

  /** Everything typed, by field name, for showing the form again. */
  public Map<String, String> values() {
    return values;
  }

  /** True where the press was on an offered reading: show the form again, store nothing. */
  public boolean onlyAsked() {
    return onlyAsked;
  }

  /** Pointers of warnings that were said to be meant. */
  public List<String> confirmed() {
    return confirmed;
  }

  /** What cannot even be written down as an entry, such as letters for passes. */
  public List<Remark> remarks() {
    return remarks;
  }

  /** True where none of these fields was filled in. */
  public boolean lacks(Iterable<String> names) {
    for (String name : names) {
      if (text(name) != null) {
        return false;
      }
    }
    return true;
  }

  /** Every value of a field of which several can be chosen. */
  public List<String> all(String name) {
    return all.getOrDefault(name, List.of());
  }

  /** The files chosen in a field; they are there as long as the request lasts. */
  public List<Path> files(String name) {
    return files.getOrDefault(name, List.of());
  }

  /** Takes what was typed into a field for done with: the form that is shown again lacks it. */
  public void forget(String name) {
    values.remove(name);
  }

  public String text(String name) {
    String value = values.get(name);
    return value == null || value.isEmpty() ? null : value;
  }

  /** Line by line, empty ones too; null where nothing was typed. */
  public List<String> lines(String name) {
    String text = text(name);
    return text == null ? null : text.lines().toList();
  }

  /** To the letter, as passwords need it; null where the form has no such field. */
  public String typed(String name) {
    return typed.get(name);
  }

  /** The version the change is based on. */
  public int version() {
    String text = text(VERSION);
    return text != null && text.matches("\\d{1,9}") ? Integer.parseInt(text) : NO_VERSION;
  }

  /** The id in a hidden field; null for whatever is none. */
  public UUID id(String name) {
    return readId(text(name));
  }

  /** An id in an address or a form; null for whatever is none. */
  public static UUID readId(String text) {
    try {
      return text == null ? null : UUID.fromString(text);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  public WrittenQuantity quantity(String name) {
    String text = text(name);
    return text == null ? null : WrittenQuantity.of(text);
  }

  public Boolean flag(String name) {
    String text = text(name);
    return text == null ? null : Boolean.valueOf(text.equals("true"));
  }

  public Integer number(String name) {
    String text = text(name);
    if (text == null) {
      return null;
    }
    try {
      return Integer.valueOf(text);
    } catch (NumberFormatException e) {
      String pointer = "/" + name.replace('.', '/');
      remarks.add(Remark.error(RemarkId.NOT_A_WHOLE_NUMBER, pointer, "A whole number, such as 2."));
      return null;
    }
  }

  /** How a stored quantity stands in a form: as typed, else its number and unit. */
  public static String typed(WrittenQuantity quantity) {
    return quantity == null ? "" : quantity.typed();
  }
}
