package club.emberwell.web.frame;

import club.emberwell.entry.FieldChange;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;

/**
 * One form of a page: its fields with what stands in them and what is said of them, and what it
 * changes. The tags {@code formState} and {@code formStart} show all but the fields; nothing typed
 * is ever lost.
 */
public final class Form {
  /** Whoever goes back to a form and changes it means another entry. */
  private static final String SENT_BEFORE =
      "You sent this form before, and it is saved. Send it again to save what it says now as well.";

  /** The field in which somebody confirms that it is them. */
  static final String CONFIRMING = "confirm_";

  private final Map<String, Field> fields = new LinkedHashMap<>();
  private final List<Line> summary = new ArrayList<>();
  private final Set<String> confirmed = new LinkedHashSet<>();
  private UnaryOperator<String> name = UnaryOperator.identity();
  private Changing changing;
  private List<Remark> doubts = List.of();
  private String ban;
  private List<FieldChange> meanwhile;
  private boolean same = true;
  private boolean typed;
  private boolean confirming;
  private boolean atField;

  /** One line of the error summary; target is the id to jump to or null. */
  public record Line(String text, String target) {}

  /**
   * What the form changes.
   *
   * @param what in one word
   * @param version the change is based on
   * @param href where it stands as it is
   */
  public record Changing(String what, long version, String href) {}

  public Form add(Field field) {
    fields.put(field.getName(), field);
    return this;
  }

  public Form addAll(Form others) {
    others.fields.values().forEach(this::add);
    return this;
  }

  /** How fields are called here that remarks call otherwise, as the page has several such. */
  public Form named(UnaryOperator<String> here) {
    name = here;
    return this;
  }

  /** Says that the form changes something stored, which others may change at the same time. */
  public Form changing(String what, long version, String href) {
    changing = new Changing(what, version, href);
    return this;
  }

  /** Puts what is stored into the fields that the form has. */
  public Form fill(Map<String, String> values) {
    values.forEach((name, value) -> find(name).ifPresent(field -> field.value(value)));
    return this;
  }

  /** Puts what was typed into the fields; a password is never sent back. */
  Form fill(SentForm sent) {
    typed = true;
    for (Field field : fields.values()) {
      String typed = sent.values().get(field.getName());
      if (field.isManyChosen()) {
        field.chosen(sent.all(field.getName()));
      } else if (typed != null && !field.isSecret()) {
        field.value(field.isHidden() ? Objects.toString(SentForm.readId(typed), "") : typed);
      }
    }
    confirmed.addAll(sent.confirmed());
    if (changing != null) {
      changing(changing.what(), sent.version(), changing.href());
    }
    return this;
  }

  /**
   * Asks who sends the form to confirm that it is them.
   *
   * @param byPassword whether a password does it
   */
  Form confirm(boolean byPassword) {
    confirming = true;
    return byPassword ? askPassword() : this;
  }

  /** Has a field for the password of whoever sends the form, behind all others. */
  Form askPassword() {
    return add(
        Field.of(CONFIRMING, "Your password")
            .hint("To confirm it is you.")
            .type("password")
            .autocomplete("current-password")
            .required());
  }

  public boolean isConfirming() {
    return confirming;
  }

  public boolean isAskingPassword() {
    return fields.containsKey(CONFIRMING);
  }

  /** The field by its dotted name; asking for one that the form lacks is a defect of the page. */
  public Field field(String name) {
    Field field = fields.get(name);
    if (field == null) {
      throw new IllegalArgumentException("the form has no field " + name);
    }
    return field;
  }

  /** The field by its dotted name, if the form has it. */
  public Optional<Field> find(String name) {
    return Optional.ofNullable(fields.get(name));
  }

  /** All that people see, in order. */
  public List<Field> getFields() {
    return fields.values().stream().filter(field -> !field.isHidden()).toList();
  }

  /** Those with something in them that people do not see. */
  public List<Field> getHidden() {
    return fields.values().stream()
        .filter(field -> field.isHidden() && !field.getValue().isEmpty())
        .toList();
  }

  /** After a refusal the cursor stands in the first field at fault, not at the list above. */
  public Form atField() {
    atField = true;
    return this;
  }

  /** Whether it does; where no field is at fault the list is what matters. */
  public boolean isCursorAtField() {
    return fields.values().stream().anyMatch(Field::isFocused);
  }

  /** Spreads remarks over the fields; those without a field here stand in the summary alone. */
  public Form remarks(List<Remark> remarks) {
    for (Remark remark : remarks) {
      String said = name(remark.field());
      Field field = find(name.apply(said)).or(() -> find(said)).orElse(null);
      if (RemarkId.ID_TAKEN.code().equals(remark.id()) && field != null && field.isHidden()) {
        field.value(UUID.randomUUID().toString());
        summary.add(new Line(SENT_BEFORE, null));
        continue;
      }
      if (field != null) {
        field.remark(remark);
      }
      if (remark.isError()) {
        summary.add(new Line(line(field, remark), field == null ? null : field.getName()));
      }
    }
    if (atField) {
      getFields().stream().filter(Field::isFailed).findFirst().ifPresent(Field::focus);
    }
    return this;
  }

  private static String line(Field field, Remark remark) {
    return field == null ? remark.detail() : field.getLabel() + ": " + remark.detail();
  }

  private static String name(String pointer) {
    return pointer.isEmpty() ? "" : pointer.substring(1).replace('/', '.');
  }

  /** Asks whether these are meant; sending the form as it is says so. */
  Form doubt(List<Remark> warnings) {
    doubts = warnings;
    warnings.forEach(warning -> confirmed.add(warning.field()));
    return remarks(warnings);
  }

  /** Says that nothing about this is stored, and why. */
  Form prohibit(String why) {
    ban = why;
    return remarks(List.of(Remark.error(RemarkId.PROHIBITED, "/material", why)));
  }

  /** Shows what differs from the form as it stands now; sending this one again replaces that. */
  Form overtakenBy(Form now) {
    changing = now.changing;
    meanwhile = new ArrayList<>();
    for (Field mine : fields.values()) {
      String stored = now.find(mine.getName()).map(Field::getShown).orElse(null);
      if (!mine.isAside() && !Objects.equals(stored, mine.getShown())) {
        same = false;
        if (!mine.isApart()) {
          meanwhile.add(new FieldChange(mine.getLabel(), stored, mine.getShown()));
        }
      }
    }
    return this;
  }

  /** Whether that says the same as this, but for what is said of the change itself. */
  public boolean isSame() {
    return same;
  }

  public List<Line> getSummary() {
    return summary;
  }

  public boolean isFailed() {
    return !summary.isEmpty();
  }

  /** Warnings to confirm before it is stored as it is. */
  public List<Remark> getDoubts() {
    return doubts;
  }

  /** Pointers that sending the form confirms: the doubts and those before. */
  public Set<String> getConfirmed() {
    return confirmed;
  }

  /** Whether it shows what was sent, not what a phone may have kept of it. */
  public boolean isTyped() {
    return typed;
  }

  /** Why nothing about this is stored, or null. */
  public String getBan() {
    return ban;
  }

  /** What it changes; null for a form that makes something new. */
  public Changing getChanging() {
    return changing;
  }

  /** Whether somebody was faster. */
  public boolean isOvertaken() {
    return meanwhile != null;
  }

  /** From what stands now to what was sent, where somebody was faster. */
  public List<FieldChange> getMeanwhile() {
    return meanwhile;
  }

  /** Whether a press on one of the form's buttons can take an offered reading. */
  public boolean isOffering() {
    return fields.values().stream().anyMatch(Field::isQuantity);
  }
}
