package club.emberwell.web.account;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.LocalSignIn;
import club.emberwell.member.Accounts;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.NumberStyles;
import club.emberwell.member.Outcome;
import club.emberwell.member.Role;
import club.emberwell.member.Sessions;
import club.emberwell.member.Tokens;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.PageFrame;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** A member's own account: how numbers read, the password, sessions and tokens. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class MePages {
  private static final int PASSWORD_LENGTH = 128;
  private static final int LABEL_LENGTH = 60;

  private static final List<Option> MEMBER_SCOPES =
      List.of(
          new Option("read", "Read everything you can read", false),
          new Option("read write", "Read, post and change things", false),
          new Option("write", "Post and change things, read nothing", false));

  private static final Option MODERATING =
      new Option("read write moderate", "All of that, and work at the desk", false);

  /** The dimensions whose unit a member can choose, with what people call them. */
  private static final Map<QuantityKind, String> CHOOSABLE =
      Map.of(
          QuantityKind.SPEED, "Speed",
          QuantityKind.LINE_SPACING, "Line spacing",
          QuantityKind.THICKNESS, "Thickness",
          QuantityKind.AREAL_DOSE, "Dose of area work",
          QuantityKind.LINE_DOSE, "Dose of line work");

  private final Accounts accounts;
  private final Members members;
  private final Sessions sessions;
  private final Tokens tokens;
  private final CurrentActor current;
  private final ClientAddress address;
  private final PageFrame page;

  MePages(
      Accounts accounts,
      Members members,
      Sessions sessions,
      Tokens tokens,
      CurrentActor current,
      ClientAddress address,
      PageFrame page) {
    this.accounts = accounts;
    this.members = members;
    this.sessions = sessions;
    this.tokens = tokens;
    this.current = current;
    this.address = address;
    this.page = page;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance me(Account account);
  }

  /**
   * What the account page shows.
   *
   * @param units one field per kind with a choice
   * @param freshToken shown once, right after it was made
   */
  record Account(
      MemberView member,
      Form preferences,
      List<Field> units,
      Form password,
      Form token,
      List<Sessions.SessionView> sessions,
      UUID thisSession,
      List<Tokens.TokenView> tokens,
      String freshToken) {}

  @GET
  @Path("me")
  public TemplateInstance me(@RestQuery String done) {
    if ("password".equals(done)) {
      page.say("Your password is changed; other browsers are signed out.");
    } else if (done != null) {
      page.say("Saved.");
    }
    return Templates.me(account(List.of(), List.of(), List.of(), null));
  }

  @POST
  @Path("me/preferences")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response prefer(MultivaluedMap<String, String> sent) {
    Map<String, String> units = new HashMap<>();
    for (QuantityKind kind : CHOOSABLE.keySet()) {
      String chosen = sent.getFirst("units." + kind.name());
      if (chosen != null) {
        units.put(kind.name(), chosen);
      }
    }
    Outcome<MemberView> outcome;
    try {
      long version = Long.parseLong(String.valueOf(sent.getFirst("version")));
      outcome = accounts.prefer(current.get(), sent.getFirst("numberStyle"), units, version);
    } catch (NumberFormatException | EntryChanged e) {
      outcome =
          Outcome.refused(
              Remark.error(RemarkId.CHANGED, "", "This was changed elsewhere since. Look again."));
    }
    if (outcome instanceof Outcome.Done<?>) {
      return to("/me?done=preferences");
    }
    return again(outcome, account(Outcomes.remarks(outcome), List.of(), List.of(), null));
  }

  @POST
  @Path("me/password")
  @LocalSignIn
  public Response password(@RestForm String current_, @RestForm String password) {
    Outcome<MemberView> outcome =
        accounts.changePassword(
            current.get(), current_, password, current.credential(), address.prefix());
    if (outcome instanceof Outcome.Done<?>) {
      return to("/me?done=password");
    }
    return again(outcome, account(List.of(), Outcomes.remarks(outcome), List.of(), null));
  }

  @POST
  @Path("me/tokens")
  public Response token(@RestForm String label, @RestForm String scopes) {
    List<String> chosen = List.of(String.valueOf(scopes).split(" "));
    Outcome<Tokens.NewToken> outcome = tokens.create(current.get(), new Tokens.Wish(label, chosen));
    if (outcome instanceof Outcome.Done<Tokens.NewToken> done) {
      return Response.ok(
              Templates.me(account(List.of(), List.of(), List.of(), done.value().token())))
          .header("Cache-Control", "no-store")
          .build();
    }
    return again(outcome, account(List.of(), List.of(), Outcomes.remarks(outcome), null));
  }

  @POST
  @Path("me/tokens/{id}/end")
  @AtAnyPace
  public Response endToken(@RestPath UUID id) {
    tokens.revoke(current.get().memberId(), id);
    return to("/me?done=token");
  }

  @POST
  @Path("me/sessions/{id}/end")
  @AtAnyPace
  public Response endSession(@RestPath UUID id) {
    sessions.end(current.get().memberId(), id);
    return to("/me?done=session");
  }

  private Account account(
      List<Remark> preferences, List<Remark> password, List<Remark> token, String freshToken) {
    MemberView member = members.byId(current.get().memberId()).orElseThrow();
    Form first = new Form().add(styleField(member));
    List<Field> units =
        CHOOSABLE.entrySet().stream()
            .sorted(Map.Entry.comparingByKey())
            .map(e -> unitField(e.getKey(), e.getValue(), member.units()))
            .toList();
    units.forEach(first::add);
    return new Account(
        member,
        first.remarks(preferences),
        units,
        passwordForm().remarks(password),
        tokenForm(current.get().moderates()).remarks(token),
        sessions.of(member.id()),
        current.credential(),
        tokens.of(member.id()),
        freshToken);
  }

  private static Field styleField(MemberView member) {
    return Field.of("numberStyle", "How you write decimals")
        .hint("Settles what 1,000 or 1.000 means when you type it on these pages.")
        .options(
            List.of(
                new Option("any", "Ask me when it could mean two things", false),
                new Option("point", "Point: 0.08 and 1,000", false),
                new Option("comma", "Comma: 0,08 and 1.000", false)))
        .value(NumberStyles.code(member.units().style()))
        .required();
  }

  private static Field unitField(QuantityKind kind, String label, UnitPreferences chosen) {
    return Field.of("units." + kind.name(), label)
        .options(
            UnitPreferences.choices(kind).stream()
                .map(c -> new Option(c.code(), c.label(), false))
                .toList())
        .value(chosen.unit(kind).code())
        .required();
  }

  private static Form passwordForm() {
    return new Form()
        .add(
            Field.of("current_", "Password now")
                .type("password")
                .autocomplete("current-password")
                .maxLength(PASSWORD_LENGTH)
                .required())
        .add(
            Field.of("password", "New password")
                .type("password")
                .autocomplete("new-password")
                .maxLength(PASSWORD_LENGTH)
                .required());
  }

  private static Form tokenForm(boolean moderates) {
    return new Form()
        .add(
            Field.of("label", "What the token is for")
                .hint("So that you know it again when you want to end it.")
                .maxLength(LABEL_LENGTH)
                .required())
        .add(
            Field.of("scopes", "What it may do")
                .hint("In your name, and never more than you may. Give it no more than it needs.")
                .options(
                    moderates
                        ? Stream.concat(MEMBER_SCOPES.stream(), Stream.of(MODERATING)).toList()
                        : MEMBER_SCOPES)
                .value("read write")
                .required());
  }

  private Response again(Outcome<?> outcome, Account account) {
    page.fail();
    return Outcomes.status(outcome).entity(Templates.me(account)).build();
  }

  private static Response to(String path) {
    return Response.seeOther(URI.create(path)).build();
  }
}
