package club.emberwell.web.frame;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
import club.emberwell.member.session.Proof.Given;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.Response;
import java.util.function.Function;
import java.util.function.Supplier;

/** What all pages have: who asks, the frame round them, and how forms are dealt with. */
public abstract class Pages {
  @Inject protected CurrentActor current;
  @Inject protected PageFrame page;
  @Inject ClientAddress address;

  protected Actor actor() {
    return current.get();
  }

  /**
   * Takes a form that was sent.
   *
   * @param form as it is shown before anything is typed, with what is stored now
   * @param shown the page round it
   */
  protected FormPage take(
      SentForm sent, Supplier<Form> form, Function<Form, TemplateInstance> shown) {
    return new FormPage(page, sent, form, shown);
  }

  /** What shows that it is truly the member who sends a form. */
  protected Given given(SentForm sent) {
    return new Given(current.credential(), sent.typed(Form.CONFIRMING), address.prefix());
  }

  /** The same for a press on a button with nothing to fill in. */
  protected FormPage press(Supplier<Form> form, Function<Form, TemplateInstance> shown) {
    return take(null, form, shown);
  }

  /** Goes on at a path of this site, so that loading the page again sends nothing. */
  protected static Response to(String path) {
    return FormPage.to(path);
  }

  /**
   * Says something above the page that one comes to from a form.
   *
   * @param done of its address; null where one comes from elsewhere
   */
  protected void say(String done, String sentence) {
    if (done != null) {
      page.say(sentence);
    }
  }
}
