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
class MemberChecks {
  private static final Pattern HANDLE = Pattern.compile("[a-z0-9](?:[a-z0-9_-]*[a-z0-9])?");

  /** Deliberately loose: only a letter that arrives proves an address. */
  private static final Pattern EMAIL =
      Pattern.compile(
          "[^\\s@\"(),:;<>\\[\\\\\\]]{1,64}@(?:[\\p{L}\\p{N}-]{1,63}\\.)+[\\p{L}\\p{N}-]{2,63}");

  private final MemberLimits limits;
  private final PasswordRules passwords;

  MemberChecks(MemberLimits limits, PasswordRules passwords) {
    this.limits = limits;
    this.passwords = passwords;
  }

  /** Remarks at {@code /handle}, {@code /email}, {@code /password}. */
  List<Remark> newMember(String handle, String email, String password) {
    List<Remark> remarks = new ArrayList<>();
    handle(handle, remarks);
    email(email, remarks);
    passwords.check(password, "/password", handle).ifPresent(remarks::add);
    return remarks;
  }

  /** The same for somebody without a password here. */
  List<Remark> newMember(String handle, String email) {
    List<Remark> remarks = new ArrayList<>();
    handle(handle, remarks);
    email(email, remarks);
    return remarks;
  }

  /** A mail address that must be there. */
  List<Remark> address(String email) {
    List<Remark> remarks = new ArrayList<>();
    if (email == null || email.isEmpty()) {
      remarks.add(Remark.error(RemarkId.EMAIL_MISSING, "/email", "A mail address is needed."));
    }
    email(email, remarks);
    return remarks;
  }

  /**
   * A free text.
   *
   * @param lines whether it may have several
   */
  static void text(
      String value, String pointer, int min, int max, boolean lines, List<Remark> remarks) {
    String text = value == null ? "" : value.strip();
    String flat = lines ? text.replaceAll("[\r\n\t]", " ") : text;
    if (Texts.length(text) < min) {
      remarks.add(Remark.error(RemarkId.TEXT_MISSING, pointer, "Something is needed here."));
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
  void label(String label, List<Remark> remarks) {
    if (label == null || label.isBlank()) {
      remarks.add(
          Remark.error(RemarkId.LABEL_MISSING, "/label", "Give it a name you will know it by."));
    } else if (Texts.length(label) > limits.labelMax()) {
      remarks.add(
          Remark.error(
              RemarkId.LABEL_LONG,
              "/label",
              "At most " + limits.labelMax() + " characters, please."));
    } else if (!Texts.isCleanUnicode(label)) {
      remarks.add(
          Remark.error(
              RemarkId.LABEL_ENCODING, "/label", "The name has characters that are not text."));
    }
  }

  /** What somebody wants of a token; remarks at label and scopes. */
  void token(Tokens.Wish wish, List<Remark> remarks) {
    label(wish.label(), remarks);
    if (wish.scopes() == null) {
      return;
    }
    boolean unknown = wish.scopes().stream().anyMatch(code -> Scope.of(code).isEmpty());
    boolean useless = !wish.scopes().contains("read") && !wish.scopes().contains("write");
    if (unknown || useless) {
      remarks.add(
          Remark.error(
              RemarkId.SCOPES, "/scopes", "Choose read, write or both, and moderate besides."));
    }
  }

  /**
   * Reads chosen units, kind by kind.
   *
   * @param written kind name (any case) -> UCUM code
   */
  Map<QuantityKind, String> units(Map<String, String> written, List<Remark> remarks) {
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
      remarks.add(Remark.error(RemarkId.HANDLE_MISSING, "/handle", "A name is needed."));
    } else if (handle.length() < limits.handleMin() || handle.length() > limits.handleMax()) {
      remarks.add(
          Remark.error(
              RemarkId.HANDLE_LENGTH,
              "/handle",
              "A name has " + limits.handleMin() + " to " + limits.handleMax() + " characters."));
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
    if (email.length() > limits.emailMax() || !EMAIL.matcher(email).matches()) {
      remarks.add(
          Remark.error(RemarkId.EMAIL_FORM, "/email", "This does not look like a mail address."));
    } else if (!Texts.isCleanUnicode(email)) {
      remarks.add(
          Remark.error(
              RemarkId.EMAIL_ENCODING, "/email", "The address has characters that are not text."));
    }
  }
}
