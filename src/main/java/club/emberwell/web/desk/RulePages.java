package club.emberwell.web.desk;

import club.emberwell.desk.rule.Rule;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.rule.Rules;
import club.emberwell.listing.Part;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
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
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Setting the rules and reading what they noticed. */
@Path("/desk/rules")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.MODERATE)
public class RulePages extends Pages {
  private static final String PATH = "/desk/rules/";

  private final Rules rules;

  RulePages(Rules rules) {
    this.rules = rules;
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
    return Templates.rules(rules.all(actor()));
  }

  @GET
  @Path("{code}")
  public TemplateInstance rule(@RestPath String code, @RestQuery Integer page) {
    return shown(code, page, form(code));
  }

  private TemplateInstance shown(String code, Integer page, Form form) {
    Rule rule = rules.one(actor(), code);
    return Templates.rule(
        new RulePage(
            rule,
            form,
            Listing.of(
                "Notes of this rule",
                "Nothing yet.",
                rules.log(actor(), code, Part.page(page)).map(ItemRow::of),
                PATH + code)));
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
  }

  private Form form(String which) {
    Rule rule = rules.one(actor(), which);
    RuleCode code = rule.code();
    boolean first = code == RuleCode.FIRST_LOOK;
    Field mode = Field.of("mode", "Action").required().choice(Rule.OFF, "Off");
    if (!first) {
      mode.choice(Rule.NOTE, "Only make a note");
    }
    mode.choice(Rule.HOLD, first ? "They wait for approval" : "Make a note and hold the entry");
    Form form =
        new Form()
            .changing("rule", rule.version(), PATH + which)
            .add(mode)
            .add(Field.of("threshold", code.counts()).inputMode("decimal").required());
    if (code == RuleCode.BURST || code == RuleCode.REPEATED_TEXT) {
      form.add(Field.of("minutes", "Minutes").inputMode("numeric").required());
    }
    return form.fill(
        Map.of(
            "mode", rule.mode(),
            "threshold", plain(rule.threshold()),
            "minutes", Integer.toString(rule.minutes())));
  }

  @POST
  @Path("{code}")
  public Response set(@RestPath String code, SentForm sent) {
    return take(sent, () -> form(code), form -> shown(code, 0, form))
        .run(
            s -> {
              Double threshold = number(s, "threshold");
              Double minutes = number(s, "minutes");
              Integer whole = minutes == null ? null : minutes.intValue();
              rules.set(actor(), code, s.typed("mode"), threshold, whole, s.version());
            })
        .then(PATH + code);
  }

  private static Double number(SentForm sent, String name) {
    String text = sent.text(name);
    try {
      return text == null ? null : Double.valueOf(text.replace(',', '.'));
    } catch (NumberFormatException e) {
      throw new EntryRefused(RemarkId.NUMBER_UNREADABLE, "/" + name, "Write a number.");
    }
  }
}
