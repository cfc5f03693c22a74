package club.emberwell.web.desk;

import club.emberwell.desk.Action;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.FlagReason;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** What the forms of the desk share: a reason, and how a refusal is shown. */
@ApplicationScoped
class DeskForms {
  private static final int UNPROCESSABLE = 422;

  private final PageFrame page;

  DeskForms(PageFrame page) {
    this.page = page;
  }

  /**
   * Does something and goes elsewhere, or shows the form again with what was wrong.
   *
   * @param again makes the page with the remarks spread over the form
   */
  Response send(Runnable deed, String to, Form form, Function<Form, TemplateInstance> again) {
    try {
      deed.run();
      return to(to);
    } catch (EntryRefused e) {
      page.fail();
      return Response.status(UNPROCESSABLE).entity(again.apply(form.remarks(e.remarks()))).build();
    }
  }

  static Response to(String path) {
    return Response.seeOther(URI.create(path)).build();
  }

  /**
   * An answer that must be given.
   *
   * @throws EntryRefused for anything but yes or no
   */
  static boolean yes(String pointer, String answer) {
    if (!"yes".equals(answer) && !"no".equals(answer)) {
      throw new EntryRefused(Remark.error(RemarkId.CHOICE_UNKNOWN, pointer, "Say yes or no."));
    }
    return answer.equals("yes");
  }

  /** Does something whose fields stand in a form of several, under a name before theirs. */
  static void under(String name, Runnable deed) {
    try {
      deed.run();
    } catch (EntryRefused e) {
      throw new EntryRefused(e.remarks().stream().map(r -> r.at(name + r.field())).toList());
    }
  }

  /** A reason others will read. */
  static Field reason(String typed, String hint) {
    return Field.of("reason", "Why")
        .hint(hint)
        .maxLength(DeskLimits.REASON)
        .required()
        .value(typed);
  }

  /** Deciding about an item in this state. */
  static Form decision(String state, String action, String reason) {
    return new Form()
        .add(
            Field.of("action", "What happens")
                .options(
                    Action.from(state).stream()
                        .map(a -> new Option(a.code(), a.label(), false))
                        .toList())
                .value(action)
                .required())
        .add(
            Field.of("reason", "Why")
                .hint("Its author reads this. It may be left out where it is let appear.")
                .maxLength(DeskLimits.REASON)
                .value(reason));
  }

  /** Answering the flags on an item in this state. */
  static Form settling(String state, String upheld, String action, String reason) {
    return new Form()
        .add(
            Field.of("upheld", "Were the flags right?")
                .options(List.of(new Option("yes", "Yes", false), new Option("no", "No", false)))
                .value(upheld)
                .required())
        .add(
            Field.of("settle.action", "What happens to it")
                .options(
                    Stream.concat(
                            Stream.of(new Option("", "Nothing", false)),
                            Action.from(state).stream()
                                .filter(a -> a == Action.HOLD || a == Action.REMOVE)
                                .map(a -> new Option(a.code(), a.label(), false)))
                        .toList())
                .value(action)
                .required())
        .add(
            Field.of("settle.reason", "Why")
                .hint("Whoever flagged it reads this, and its author if something happens.")
                .maxLength(DeskLimits.REASON)
                .required()
                .value(reason));
  }

  static Form flag(String reason, String note) {
    return new Form()
        .add(
            Field.of("reason", "What is wrong")
                .options(
                    Stream.of(FlagReason.values())
                        .map(r -> new Option(r.code(), r.label(), false))
                        .toList())
                .value(reason)
                .required())
        .add(
            Field.of("note", "What a moderator should know")
                .maxLength(DeskLimits.NOTE)
                .value(note));
  }
}
