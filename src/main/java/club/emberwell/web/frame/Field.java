package club.emberwell.web.frame;

import club.emberwell.remark.Coded;
import club.emberwell.remark.Remark;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;

/**
 * One form field with what was typed and what is said of it. The name is the JSON pointer with dots
 * ({@code settings.speed}), so that remarks find their field.
 */
public final class Field {
  private static final int DEFAULT_MAX_LENGTH = 200;
  private static final int QUANTITY_LENGTH = 64;

  private final String name;
  private final String label;
  private String hint;
  private String value = "";
  private String type = "text";
  private String inputMode;
  private String autocomplete;
  private String list;
  private boolean required;
  private boolean isQuantity;
  private boolean aside;
  private boolean apart;
  private boolean lines;
  private boolean folded;
  private boolean several;
  private boolean focused;
  private Field unit;
  private int maxLength = DEFAULT_MAX_LENGTH;
  private FieldOptions options = FieldOptions.NONE;
  private final FieldRemarks said = new FieldRemarks();

  /** One of the values to choose from. */
  public record Option(String value, String label, boolean selected) {}

  private Field(String name, String label) {
    this.name = name;
    this.label = label;
  }

  public static Field of(String name, String label) {
    return new Field(name, label);
  }

  /** The hidden id what is sent will have, so that sending twice stores once. */
  public static Field newId() {
    return of("id", "").hidden().value(UUID.randomUUID().toString());
  }

  public Field hint(String text) {
    this.hint = text;
    return this;
  }

  public Field value(String typed) {
    this.value = typed == null ? "" : typed;
    options = options.only(value::equals);
    return this;
  }

  /**
   * HTML input type; numbers with units are text with a decimal keyboard, see {@link #quantity()}.
   */
  public Field type(String htmlType) {
    this.type = htmlType;
    return this;
  }

  /** A number with a unit: text, so that commas, fractions and units can be typed. */
  public Field quantity() {
    this.isQuantity = true;
    this.inputMode = "text";
    this.autocomplete = "off";
    return maxLength(QUANTITY_LENGTH);
  }

  /** A quantity as people type it. */
  public static Field quantity(String name, String label, String hint) {
    return of(name, label).hint(hint).quantity();
  }

  /** Which keyboard a phone shows. */
  public Field inputMode(String mode) {
    this.inputMode = mode;
    return this;
  }

  public Field autocomplete(String token) {
    this.autocomplete = token;
    return this;
  }

  /** Id of a datalist with suggestions. */
  public Field list(String datalistId) {
    this.list = datalistId;
    return this;
  }

  public Field required() {
    this.required = true;
    return this;
  }

  /** Says something about the change, not of what is changed. */
  public Field aside() {
    this.aside = true;
    return this;
  }

  /** Compared by the page itself, where somebody was faster. */
  public Field apart() {
    this.apart = true;
    return this;
  }

  /** Not to be seen; an id or nothing, as people do not correct it. */
  public Field hidden() {
    this.type = "hidden";
    return this;
  }

  /** Says in which unit a number is that comes without one; compared together with it. */
  public Field inUnit(Field chosen) {
    this.unit = chosen.aside();
    return this;
  }

  /** The field of its unit, or null. */
  public Field getUnit() {
    return unit;
  }

  /** Several lines of text. */
  public Field lines() {
    this.lines = true;
    return this;
  }

  /** Its choices stand in a list that opens, not all in sight. */
  public Field folded() {
    this.folded = true;
    return this;
  }

  /** Any number of its choices can be taken. */
  public Field several() {
    this.several = true;
    return this;
  }

  /** Takes these of its choices and no others. */
  public Field chosen(Collection<String> codes) {
    options = options.only(codes::contains);
    return this;
  }

  public Field maxLength(int characters) {
    this.maxLength = characters;
    return this;
  }

  public Field options(List<Option> choices) {
    this.options = new FieldOptions(choices).also(value);
    return this;
  }

  /** Adds a value to choose. */
  public Field choice(String code, String words) {
    options = options.with(code, words).also(value);
    return this;
  }

  public <T> Field choices(Collection<T> all, Function<T, String> code, Function<T, String> words) {
    all.forEach(one -> choice(code.apply(one), words.apply(one)));
    return this;
  }

  /** The same of what every value of an enum is called. */
  public <E extends Enum<E> & Coded> Field choices(E[] all, Function<E, String> words) {
    return choices(List.of(all), Coded::code, words);
  }

  void remark(Remark remark) {
    said.add(remark);
  }

  public String getName() {
    return name;
  }

  public String getLabel() {
    return label;
  }

  public String getHint() {
    return hint;
  }

  public String getValue() {
    return value;
  }

  /** What it holds as people read it, or null. */
  String getShown() {
    String typed = value.isEmpty() ? null : withUnit();
    return options.taken().orElse(typed);
  }

  private String withUnit() {
    boolean bare = unit != null && !unit.value.isEmpty() && !value.endsWith(unit.value);
    return bare ? value + " " + unit.value : value;
  }

  boolean isAside() {
    return aside || isSecret() || isHidden();
  }

  boolean isQuantity() {
    return isQuantity;
  }

  boolean isApart() {
    return apart;
  }

  boolean isHidden() {
    return type.equals("hidden");
  }

  boolean isSecret() {
    return type.equals("password");
  }

  public String getType() {
    return type;
  }

  public String getInputMode() {
    return inputMode;
  }

  public String getAutocomplete() {
    return autocomplete;
  }

  public String getList() {
    return list;
  }

  /** Not named as the method above: a template would call that one and make every field needed. */
  public boolean isMandatory() {
    return required;
  }

  public boolean isLong() {
    return lines;
  }

  /** Not named as the method above, as for {@link #isMandatory}. */
  public boolean isManyChosen() {
    return several;
  }

  /** Puts the cursor here when the page opens. */
  void focus() {
    this.focused = true;
  }

  public boolean isFocused() {
    return focused;
  }

  public boolean isFoldedUp() {
    return folded;
  }

  public int getMaxLength() {
    return maxLength;
  }

  public List<Option> getOptions() {
    return options.all();
  }

  public List<String> getErrors() {
    return said.errors();
  }

  public List<String> getWarnings() {
    return said.warnings();
  }

  /** What a number was read as, and what of the words beside it was left out. */
  public List<String> getNotes() {
    return said.notes();
  }

  public List<String> getReadings() {
    return said.readings();
  }

  public boolean isFailed() {
    return !said.errors().isEmpty();
  }

  public boolean isWarned() {
    return !said.warnings().isEmpty();
  }

  /** Ids of the hint and errors for aria-describedby, or null. */
  public String getDescribedBy() {
    List<String> ids = new ArrayList<>();
    if (hint != null) {
      ids.add(name + "-hint");
    }
    for (int i = 0; i < said.errors().size(); i++) {
      ids.add(name + "-error" + i);
    }
    return ids.isEmpty() ? null : String.join(" ", ids);
  }
}
