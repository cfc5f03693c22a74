package club.emberwell.web.frame;

import club.emberwell.remark.ConfirmationNeeded;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.TooManyTries;
import club.emberwell.remark.TurnedDown;
import club.emberwell.remark.Unproven;
import club.emberwell.report.EntryUnconfirmed;
import club.emberwell.report.ProhibitedWork;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
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
  private static final int TOO_MANY = 429;

  /** Seconds in which photos that wait find their turn. */
  private static final int SOON = 5;

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
    return store(nothingFrom(deed));
  }

  private static Function<SentForm, Void> nothingFrom(Consumer<SentForm> deed) {
    return s -> {
      deed.accept(s);
      return null;
    };
  }

  /** Does what the form asks for, and keeps what came of it. */
  public <T> Stored<T> store(Function<SentForm, T> deed) {
    if (sent != null && sent.onlyAsked()) {
      return again(Response.Status.OK.getStatusCode(), form -> form);
    }
    try {
      return new Stored<>(deed.apply(sent), null);
    } catch (EntryRefused e) {
      return e.remarks().stream().anyMatch(r -> r.id().equals(RemarkId.PICTURES_BUSY.code()))
          ? busy(e)
          : refused(form -> form.remarks(e.remarks()));
    } catch (ConfirmationNeeded e) {
      page.fail();
      return again(Response.Status.FORBIDDEN.getStatusCode(), form -> form.confirm(e.byPassword()));
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

  /** The same where whoever is turned down stays at the form, with why above it. */
  public <T> Stored<T> attempt(Function<SentForm, T> deed) {
    try {
      return store(deed);
    } catch (TurnedDown e) {
      page.fail(e);
      Form form = typed().remarks(List.of(Remark.error(id(e), "", e.getMessage())));
      return new Stored<>(null, answer(e).entity(shown.apply(form)).build());
    }
  }

  /** The same where nothing comes of it. */
  public Stored<Void> attemptTo(Consumer<SentForm> deed) {
    return attempt(nothingFrom(deed));
  }

  private static RemarkId id(TurnedDown e) {
    return e instanceof Unproven
        ? RemarkId.UNPROVEN
        : e instanceof TooManyTries ? RemarkId.THROTTLED : RemarkId.DENIED;
  }

  /** The answer to somebody who is turned down, to be filled with a page. */
  public static Response.ResponseBuilder answer(TurnedDown e) {
    if (e instanceof TooManyTries tries) {
      return Response.status(TOO_MANY)
          .header("Retry-After", Math.max(1, tries.retryAfter().toSeconds()));
    }
    return Response.status(
        e instanceof Unproven ? Response.Status.UNAUTHORIZED : Response.Status.FORBIDDEN);
  }

  private <T> Stored<T> refused(UnaryOperator<Form> said) {
    page.fail();
    return again(UNPROCESSABLE, said);
  }

  /** All is right but the moment: what sends forms by itself comes again. */
  private <T> Stored<T> busy(EntryRefused e) {
    page.fail();
    TemplateInstance template = shown.apply(typed().remarks(e.remarks()));
    return new Stored<>(
        null,
        Response.status(Response.Status.SERVICE_UNAVAILABLE)
            .header("Retry-After", SOON)
            .entity(template)
            .build());
  }

  private <T> Stored<T> again(int status, UnaryOperator<Form> said) {
    TemplateInstance template = shown.apply(said.apply(typed()));
    return new Stored<>(null, Response.status(status).entity(template).build());
  }

  private Form typed() {
    Form form = fresh.get();
    if (sent == null) {
      return form;
    }
    return (sent.typed(Form.CONFIRMING) == null ? form : form.askPassword()).fill(sent);
  }
}
