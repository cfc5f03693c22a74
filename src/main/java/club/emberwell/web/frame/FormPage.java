package club.emberwell.web.frame;

import club.emberwell.member.Outcome;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.ProhibitedWork;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/**
 * A form that was sent: stores what it says and goes on, or shows it again with everything that was
 * typed: 422 with remarks at their fields, with doubts to confirm or with why nothing about such
 * work is stored; 412 with both versions where somebody was faster.
 */
public final class FormPage {
  private static final int UNPROCESSABLE = 422;

  private final PageFrame page;
  private final SentForm sent;
  private final Supplier<Form> fresh;
  private final Function<Form, TemplateInstance> shown;

  FormPage(
      PageFrame page, SentForm sent, Supplier<Form> fresh, Function<Form, TemplateInstance> shown) {
    this.page = page;
    this.sent = sent;
    this.fresh = fresh;
    this.shown = shown;
  }

  /** What came of it: where to go on from, or the answer that shows the form again. */
  public final class Stored<T> {
    private final T value;
    private final Response again;

    private Stored(T value, Response again) {
      this.value = value;
      this.again = again;
    }

    private <R> Stored<R> next(Function<T, Stored<R>> step) {
      return again == null ? step.apply(value) : new Stored<>(null, again);
    }

    /** Goes on at a path of this site. */
    public Response then(String path) {
      return then(done -> path);
    }

    public Response then(Function<? super T, String> path) {
      return answer(done -> to(path.apply(done)));
    }

    /** Shows a page round what was typed and what came of it. */
    public Response show(BiFunction<Form, ? super T, TemplateInstance> template) {
      return answer(done -> Response.ok(template.apply(typed(), done)).build());
    }

    /** Shows this once what no address leads to again, such as a secret. */
    public Response showOnce(Function<? super T, TemplateInstance> template) {
      return answer(
          done -> Response.ok(template.apply(done)).header("Cache-Control", "no-store").build());
    }

    /** Answers by itself. */
    public Response answer(Function<? super T, Response> answer) {
      return again == null ? answer.apply(value) : again;
    }
  }

  /** Goes on at a path of this site, so that loading the page again sends nothing. */
  public static Response to(String path) {
    return Response.seeOther(URI.create(path)).build();
  }

  /** Does what the form asks for. */
  public Stored<Void> run(Consumer<SentForm> deed) {
    return store(
        s -> {
          deed.accept(s);
          return null;
        });
  }

  /** Does what the form asks for, and keeps what came of it. */
  public <T> Stored<T> store(Function<SentForm, T> deed) {
    if (sent != null && sent.onlyAsked()) {
      return again(Response.Status.OK.getStatusCode(), form -> form);
    }
    try {
      return new Stored<>(deed.apply(sent), null);
    } catch (EntryRefused e) {
      return refused(form -> form.remarks(e.remarks()));
    } catch (EntryUnconfirmed e) {
      return refused(form -> form.doubt(e.warnings()));
    } catch (ProhibitedWork e) {
      return refused(form -> form.prohibit(e.ban().sentence()));
    } catch (EntryChanged e) {
      page.fail();
      return again(
          Response.Status.PRECONDITION_FAILED.getStatusCode(),
          form -> form.overtakenBy(fresh.get()));
    }
  }

  /** Does what the form asks for where failing is an answer, too. */
  public <T> Stored<T> attempt(Function<SentForm, Outcome<T>> deed) {
    return store(deed).next(this::failed);
  }

  private <T> Stored<T> failed(Outcome<T> outcome) {
    if (outcome instanceof Outcome.Done<T> done) {
      return new Stored<>(done.value(), null);
    }
    page.fail();
    Form form = typed().remarks(Outcomes.remarks(outcome));
    return new Stored<>(null, Outcomes.status(outcome).entity(shown.apply(form)).build());
  }

  private <T> Stored<T> refused(UnaryOperator<Form> said) {
    page.fail();
    return again(UNPROCESSABLE, said);
  }

  private <T> Stored<T> again(int status, UnaryOperator<Form> said) {
    TemplateInstance template = shown.apply(said.apply(typed()));
    return new Stored<>(null, Response.status(status).entity(template).build());
  }

  private Form typed() {
    Form form = fresh.get();
    return sent == null ? form : form.fill(sent);
  }
}
