package club.emberwell.web.account;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.LocalSignIn;
import club.emberwell.member.Licence;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import club.emberwell.member.account.FirstStep;
import club.emberwell.member.account.FirstSteps;
import club.emberwell.member.account.NewPasswords;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Tokens;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitPreferences;
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
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** A member's own account: how numbers read, the password, sessions and tokens. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class MePages extends Pages {
  private static final int LABEL_LENGTH = 60;

  /** The dimensions whose unit a member can choose, with what people call them. */
  private static final Map<QuantityKind, String> CHOOSABLE =
      Map.of(
          QuantityKind.SPEED, "Speed",
          QuantityKind.LINE_SPACING, "Line spacing",
          QuantityKind.REPETITION_RATE, "Frequency",
          QuantityKind.PULSE_DURATION, "Pulse duration",
          QuantityKind.THICKNESS, "Thickness",
          QuantityKind.AREAL_DOSE, "Energy per area (dose)",
          QuantityKind.LINE_DOSE, "Energy per length (line dose)");

  private final Accounts accounts;
  private final NewPasswords passwords;
  private final Members members;
  private final Sessions sessions;
  private final Tokens tokens;
  private final FirstSteps steps;
  private final ClubOptions club;
  private final ThisBrowser browser;

  MePages(
      Accounts accounts,
      NewPasswords passwords,
      Members members,
      Sessions sessions,
      Tokens tokens,
      FirstSteps steps,
      ClubOptions club,
      ThisBrowser browser) {
    this.accounts = accounts;
    this.passwords = passwords;
    this.members = members;
    this.sessions = sessions;
    this.tokens = tokens;
    this.steps = steps;
    this.club = club;
    this.browser = browser;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance me(Account account);
  }

  /** What the account page shows. */
  record Account(MemberView member, Forms forms, Keys keys) {}

  /** What can be changed. */
  record Forms(Form preferences, Form sharing, Form password, Form token) {
    /** The same but for what is not null: as it was sent. */
    private Forms with(Form numbers, Form shared, Form word, Form key) {
      return new Forms(
          Objects.requireNonNullElse(numbers, preferences),
          Objects.requireNonNullElse(shared, sharing),
          Objects.requireNonNullElse(word, password),
          Objects.requireNonNullElse(key, token));
    }
  }

  /**
   * By what this member is signed in.
   *
   * @param here the session of the reader
   * @param fresh a token shown once, right after it was made; or null
   */
  record Keys(
      List<Sessions.SessionView> sessions,
      UUID here,
      List<Tokens.TokenView> tokens,
      String fresh) {}

  @GET
  @Path("me")
  public TemplateInstance me(@RestQuery String done) {
    say(
        done,
        switch (Objects.toString(done)) {
          case "password" -> "Your password is changed. You are signed out everywhere else.";
          case "confirmed" -> "It is you. Go back to your form in the other tab and send it again.";
          default -> "Saved.";
        });
    return shown(forms(), null);
  }

  private Forms forms() {
    return new Forms(preferences(), sharing(), password(), token());
  }

  private MemberView member() {
    return members.byId(actor().memberId()).orElseThrow();
  }

  private TemplateInstance shown(Forms forms, String fresh) {
    MemberView member = member();
    return Templates.me(
        new Account(
            member,
            forms,
            new Keys(
                sessions.of(member.id()), current.credential(), tokens.of(member.id()), fresh)));
  }

  @POST
  @Path("me/preferences")
  public Response prefer(SentForm sent) {
    return take(sent, this::preferences, form -> shown(forms().with(form, null, null, null), null))
        .attemptTo(
            s -> {
              accounts.prefer(actor(), reading(s), s.version());
              steps.took(actor(), FirstStep.UNITS);
            })
        .then("/me?done=preferences");
  }

  @POST
  @Path("me/sharing")
  public Response share(SentForm sent) {
    return take(sent, this::sharing, form -> shown(forms().with(null, form, null, null), null))
        .attempt(s -> accounts.prefer(actor(), sharing(s), s.version()))
        .then("/me?done=sharing");
  }

  private Accounts.Wish reading(SentForm sent) {
    Accounts.Wish before = Accounts.Wish.of(member());
    return new Accounts.Wish(
        sent.typed("numberStyle"), units(sent), before.licence(), before.named());
  }

  private Accounts.Wish sharing(SentForm sent) {
    Accounts.Wish before = Accounts.Wish.of(member());
    return new Accounts.Wish(
        before.style(),
        before.units(),
        sent.typed("licence"),
        !"false".equals(sent.typed("named")));
  }

  private static Map<String, String> units(SentForm sent) {
    Map<String, String> units = new HashMap<>();
    for (QuantityKind kind : CHOOSABLE.keySet()) {
      String chosen = sent.typed("units." + kind.name());
      if (chosen != null && !chosen.isEmpty()) {
        units.put(kind.name(), chosen);
      }
    }
    return units;
  }

  @POST
  @Path("me/password")
  @LocalSignIn
  public Response password(SentForm sent) {
    return take(sent, this::password, form -> shown(forms().with(null, null, form, null), null))
        .attempt(s -> passwords.change(actor(), wish(s), current.credential(), browser.address()))
        .answer(
            session -> {
              session.ifPresent(browser::begin);
              return to("/me?done=password");
            });
  }

  private static NewPasswords.Wish wish(SentForm sent) {
    return new NewPasswords.Wish(
        sent.typed("current_"), sent.typed("password"), "keep".equals(sent.typed("programs")));
  }

  @POST
  @Path("me/tokens")
  public Response token(SentForm sent) {
    return take(sent, this::token, form -> shown(forms().with(null, null, null, form), null))
        .attempt(
            s ->
                tokens.create(
                    actor(),
                    new Tokens.Wish(
                        s.typed("label"), List.of(String.valueOf(s.typed("scopes")).split(" "))),
                    given(s)))
        .showOnce(made -> shown(forms(), made.token()));
  }

  @POST
  @Path("me/tokens/{id}/end")
  @AtAnyPace
  public Response endToken(@RestPath UUID id) {
    tokens.revoke(actor().memberId(), id);
    return to("/me?done=token");
  }

  @POST
  @Path("me/sessions/{id}/end")
  @AtAnyPace
  public Response endSession(@RestPath UUID id) {
    sessions.end(actor().memberId(), id);
    return to("/me?done=session");
  }

  private Form preferences() {
    MemberView member = member();
    Form form = new Form().changing("account", member.version(), "/me").add(styleField(member));
    CHOOSABLE.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(kind -> form.add(unitField(kind.getKey(), kind.getValue(), member.units())));
    return form;
  }

  private Form sharing() {
    MemberView member = member();
    Licence chosen = member.sharing().licence();
    return new Form()
        .changing("account", member.version(), "/me")
        .add(
            Field.of("licence", "Licence of what you post from now on")
                .hint("What you posted before keeps the licence it has.")
                .folded()
                .choice("", "As the club (" + club.card().dataLicence().title() + ")")
                .choices(Licence.values(), Licence::label)
                .value(chosen == null ? "" : chosen.code()))
        .add(
            Field.of("named", "Author in data that others download")
                .hint("If nobody, your name is in none of it, also not beside old results.")
                .folded()
                .choice("true", "My user name")
                .choice("false", "Nobody")
                .value(Boolean.toString(member.sharing().named()))
                .required());
  }

  private static Field styleField(MemberView member) {
    return Field.of("numberStyle", "How you write decimals")
        .folded()
        .hint("Then we know what 1,000 or 1.000 means when you type it.")
        .choice("any", "Ask me each time")
        .choice("point", "Point: 0.08 and 1,000")
        .choice("comma", "Comma: 0,08 and 1.000")
        .value(member.units().style().code())
        .required();
  }

  private static Field unitField(QuantityKind kind, String label, UnitPreferences said) {
    return Field.of("units." + kind.name(), label)
        .folded()
        .choice("", "Not chosen: shown in " + UnitPreferences.choices(kind).get(0).label())
        .choices(UnitPreferences.choices(kind), c -> c.code(), c -> c.label())
        .value(said.isStated(kind) ? said.unit(kind).code() : "");
  }

  private Form password() {
    return AccountFields.anotherPassword(!tokens.of(actor().memberId()).isEmpty());
  }

  private Form token() {
    Field scopes =
        Field.of("scopes", "What it may do")
            .hint("It acts in your name. Give it only what it needs.")
            .folded()
            .choice("read", "Read what you can read")
            .choice("read write", "Read, post and edit")
            .choice("write", "Post and edit, but not read")
            .value("read write")
            .required();
    if (actor().moderates()) {
      scopes.choice("read write moderate", "Read, post, edit and moderate");
    }
    return new Form()
        .add(
            Field.of("label", "What the token is for")
                .hint("So that you recognise it later.")
                .maxLength(LABEL_LENGTH)
                .required())
        .add(scopes);
  }
}
