package club.emberwell.member;

import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitChoice;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Looks at what people enter about themselves; says what is wrong by field. */
@ApplicationScoped
public class MemberChecks {
  private static final Pattern HANDLE = Pattern.compile("[a-z0-9](?:[a-z0-9_-]*[a-z0-9])?");

  /** Deliberately loose: only a letter that arrives proves an address. */
  private static final Pattern EMAIL =
      Pattern.compile(
          "[^\\s@\"(),:;<>\\[\\\\\\]]{1,64}@(?:[\\p{L}\\p{N}-]{1,63}\\.)+[\\p{L}\\p{N}-]{2,63}");

  /** Remarks at {@code /handle} and {@code /email}. */
  public List<Remark> newMember(String handle, String email) {
    List<Remark> remarks = new ArrayList<>();
    handle(handle, remarks);
    email(email, remarks);
    return remarks;
  }

  /**
   * What is wrong with a name that somebody chose, beside its letters.
   *
   * @param club what the club calls itself
   */
  public List<Remark> chosenName(String handle, String club) {
    return handle == null
        ? List.of()
        : NameRules.chosen(handle, club).map(List::of).orElseGet(List::of);
  }

  /** Says no more than that: nobody learns who has an address. */
  public static Remark emailTaken() {
    return Remark.error(RemarkId.EMAIL_UNUSABLE, "/email", "This address cannot be used here.");
  }

  /** A mail address that must be there. */
  public List<Remark> address(String email) {
    List<Remark> remarks = new ArrayList<>();
    if (email == null || email.isEmpty()) {
      remarks.add(
          Remark.error(RemarkId.EMAIL_MISSING, "/email", "Please enter an e-mail address."));
    }
    email(email, remarks);
    return remarks;
  }

  /**
   * A free text.
   *
   * @param lines whether it may have several
   */
  public static void text(
      String value, String pointer, int min, int max, boolean lines, List<Remark> remarks) {
    String text = value == null ? "" : value.strip();
    String flat = lines ? text.replaceAll("[\r\n\t]", " ") : text;
    if (Texts.length(text) < min) {
      remarks.add(Remark.error(RemarkId.TEXT_MISSING, pointer, "Please fill this in."));
    } else if (Texts.length(text) > max) {
      remarks.add(
          Remark.error(RemarkId.TEXT_LONG, pointer, "At most " + max + " characters, please."));
    } else if (!Texts.isCleanUnicode(flat)) {
      remarks.add(
          Remark.error(
              RemarkId.TEXT_ENCODING, pointer, "The text has characters that are not text."));
    }
  }

  /** A name for a session or a token. */
  public void label(String label, List<Remark> remarks) {
    if (label == null || label.isBlank()) {
      remarks.add(
          Remark.error(
              RemarkId.LABEL_MISSING, "/label", "Give it a name that you will recognise."));
    } else if (Texts.length(label) > MemberLimits.LABEL_MAX) {
      remarks.add(
          Remark.error(
              RemarkId.LABEL_LONG,
              "/label",
              "At most " + MemberLimits.LABEL_MAX + " characters, please."));
    } else if (!Texts.isCleanUnicode(label)) {
      remarks.add(
          Remark.error(
              RemarkId.LABEL_ENCODING, "/label", "The name has characters that are not text."));
    }
  }

  /**
   * Reads chosen units, kind by kind.
   *
   * @param written kind name (any case) -> UCUM code
   */
  public Map<QuantityKind, String> units(Map<String, String> written, List<Remark> remarks) {
    Map<QuantityKind, String> units = new EnumMap<>(QuantityKind.class);
    written.forEach(
        (name, unit) -> {
          String pointer = "/units/" + name.replace("~", "~0").replace("/", "~1");
          QuantityKind kind = kind(name).orElse(null);
          if (kind == null) {
            remarks.add(
                Remark.error(RemarkId.DIMENSION_UNKNOWN, pointer, "There is no such dimension."));
          } else if (unit == null || !UnitPreferences.isChoice(kind, unit)) {
            remarks.add(
                Remark.error(
                    RemarkId.UNIT_UNKNOWN, pointer, "Choose one of " + offered(kind) + "."));
          } else {
            units.put(kind, unit);
          }
        });
    return units;
  }

  /** A kind by its name in the API, {@code lineSpacing}, or by the enum's own. */
  private static Optional<QuantityKind> kind(String name) {
    String folded = name.replace("_", "");
    return Arrays.stream(QuantityKind.values())
        .filter(d -> d.name().replace("_", "").equalsIgnoreCase(folded))
        .findFirst();
  }

  private static String offered(QuantityKind kind) {
    return UnitPreferences.choices(kind).stream()
        .map(UnitChoice::code)
        .collect(Collectors.joining(", "));
  }

  private void handle(String handle, List<Remark> remarks) {
    if (handle == null || handle.isEmpty()) {
      remarks.add(Remark.error(RemarkId.HANDLE_MISSING, "/handle", "Please enter a name."));
    } else if (handle.length() < MemberLimits.HANDLE_MIN
        || handle.length() > MemberLimits.HANDLE_MAX) {
      remarks.add(
          Remark.error(
              RemarkId.HANDLE_LENGTH,
              "/handle",
              "A name has "
                  + MemberLimits.HANDLE_MIN
                  + " to "
                  + MemberLimits.HANDLE_MAX
                  + " characters."));
    } else if (!HANDLE.matcher(handle.toLowerCase(Locale.ROOT)).matches()) {
      remarks.add(
          Remark.error(
              RemarkId.HANDLE_CHARACTERS,
              "/handle",
              "A name has letters a-z, digits, dashes and underscores, and starts and ends with"
                  + " a letter or digit."));
    }
  }

  private void email(String email, List<Remark> remarks) {
    if (email == null || email.isEmpty()) {
      return;
    }
    if (email.length() > MemberLimits.EMAIL_MAX || !EMAIL.matcher(email).matches()) {
      remarks.add(
          Remark.error(
              RemarkId.EMAIL_FORM, "/email", "This does not look like an e-mail address."));
    } else if (!Texts.isCleanUnicode(email)) {
      remarks.add(
          Remark.error(
              RemarkId.EMAIL_ENCODING, "/email", "The address has characters that are not text."));
    }
  }
}
