package club.emberwell.web.desk;

import club.emberwell.access.CurrentActor;
import club.emberwell.desk.Rule;
import club.emberwell.desk.RuleCode;
import club.emberwell.desk.Rules;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Setting the rules and reading what they noticed. */
@Path("/desk/rules")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class RulePages {
  private final Rules rules;
  private final CurrentActor current;
  private final DeskForms forms;

  RulePages(Rules rules, CurrentActor current, DeskForms forms) {
    this.rules = rules;
    this.current = current;
    this.forms = forms;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance rules(List<Rule> rules);

    static native TemplateInstance rule(RulePage page);
  }

  /** One rule with its log. */
  record RulePage(Rule rule, Form form, Listing<ItemRow> list) {}

  @GET
  public TemplateInstance all() {
    return Templates.rules(rules.all(current.get()));
  }

  @GET
  @Path("{code}")
  public TemplateInstance rule(@RestPath String code, @RestQuery Integer page) {
    Rule rule = rules.one(current.get(), code);
    return shown(
        code,
        page,
        form(rule.code(), rule.mode(), plain(rule.threshold()), Integer.toString(rule.minutes())));
  }

  private TemplateInstance shown(String code, Integer page, Form form) {
    Rule rule = rules.one(current.get(), code);
    return Templates.rule(
        new RulePage(
            rule,
            form,
            Listing.of(
                "What it noticed",
                "Nothing yet.",
                rules.log(current.get(), code, page).map(ItemRow::of),
                "/desk/rules/" + code)));
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
  }

  private static Form form(RuleCode code, String mode, String threshold, String minutes) {
    List<Option> modes = new ArrayList<>(List.of(new Option(Rule.OFF, "Off", false)));
    boolean first = code == RuleCode.FIRST_LOOK;
    if (!first) {
      modes.add(new Option(Rule.NOTE, "Note it and no more", false));
    }
    modes.add(new Option(Rule.HOLD, first ? "They wait" : "Note it and hold it", false));
    Form form =
        new Form()
            .add(Field.of("mode", "What it does").options(modes).value(mode).required())
            .add(
                Field.of("threshold", code.counts())
                    .inputMode("decimal")
                    .value(threshold)
                    .required());
    if (looksBack(code)) {
      form.add(Field.of("minutes", "Minutes").inputMode("numeric").value(minutes).required());
    }
    return form;
  }

  private static boolean looksBack(RuleCode code) {
    return code == RuleCode.BURST || code == RuleCode.REPEATED_TEXT;
  }

  @POST
  @Path("{code}")
  public Response set(
      @RestPath String code,
      @RestForm String mode,
      @RestForm String threshold,
      @RestForm String minutes,
      @RestForm int version) {
    RuleCode which = rules.one(current.get(), code).code();
    return forms.send(
        () -> set(code, mode, number("/threshold", threshold), minutes, version),
        "/desk/rules/" + code,
        form(which, mode, threshold, minutes),
        form -> shown(code, 0, form));
  }

  private void set(String code, String mode, Double threshold, String minutes, int version) {
    Double time = number("/minutes", minutes);
    try {
      rules.set(
          current.get(), code, mode, threshold, time == null ? null : time.intValue(), version);
    } catch (EntryChanged e) {
      throw new EntryRefused(
          Remark.error(RemarkId.CHANGED, "", "Somebody else set this rule meanwhile. Look again."));
    }
  }

  private static Double number(String pointer, String text) {
    if (text == null || text.isBlank()) {
      return null;
    }
    try {
      return Double.valueOf(text.strip().replace(',', '.'));
    } catch (NumberFormatException e) {
      throw new EntryRefused(Remark.error(RemarkId.NUMBER_UNREADABLE, pointer, "Write a number."));
    }
  }
}
