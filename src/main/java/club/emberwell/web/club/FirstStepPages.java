package club.emberwell.web.club;

import club.emberwell.desk.rule.Rules;
import club.emberwell.exchange.example.ExampleClub;
import club.emberwell.exchange.example.ExampleState;
import club.emberwell.member.Role;
import club.emberwell.member.account.FirstStep;
import club.emberwell.member.account.FirstSteps;
import club.emberwell.member.club.ClubCare;
import club.emberwell.member.club.ClubOptions.Card;
import club.emberwell.web.about.StepList;
import club.emberwell.web.about.StepList.Step;
import club.emberwell.web.frame.Pages;
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
import java.util.Set;
import org.jboss.resteasy.reactive.RestQuery;

/** What an owner does first: name, door, rules, people, an example to look at. */
@Path(FirstStepPages.PATH)
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.OWN)
public class FirstStepPages extends Pages {
  static final String PATH = "/desk/club/first-steps";

  /** What a club is called that nobody named. */
  private static final String UNNAMED = "Emberwell";

  private static final long UNTOUCHED = 1;

  private final ClubCare care;
  private final Rules rules;
  private final FirstSteps steps;
  private final ExampleClub example;

  FirstStepPages(ClubCare care, Rules rules, FirstSteps steps, ExampleClub example) {
    this.care = care;
    this.rules = rules;
    this.steps = steps;
    this.example = example;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance steps(StepList list, boolean rulesOpen, boolean exampleOpen);
  }

  @GET
  public TemplateInstance steps(@RestQuery String done) {
    say(done, "Saved.");
    Card card = care.card();
    Set<FirstStep> took = steps.ofOwners();
    boolean ruled =
        took.contains(FirstStep.OWNER_RULES)
            || rules.all(actor()).stream().anyMatch(rule -> rule.changedAt() != null);
    boolean shown =
        took.contains(FirstStep.OWNER_EXAMPLE) || example.get(actor()).state() != ExampleState.NONE;
    StepList list =
        new StepList(
            List.of(
                new Step(
                    "/desk/club#name",
                    "Name your club",
                    "Members see the name on every page.",
                    !card.name().equals(UNNAMED)),
                new Step(
                    "/desk/club#door",
                    "Decide who can join and who can read",
                    "Now: "
                        + door(card)
                        + (card.version() > UNTOUCHED ? "" : " Save the page to keep it so."),
                    card.version() > UNTOUCHED),
                new Step(
                    "/desk/rules",
                    "Look at the rules",
                    "The first entries of new members wait for you until you trust them.",
                    ruled),
                new Step(
                    ExamplePages.PATH,
                    "Look at an example club",
                    "An invented club, to see the pages full. One press removes it.",
                    shown),
                new Step(
                    "/desk/invitations",
                    "Invite the first member",
                    "Make a link and send it to somebody.",
                    steps.anybodyElse())),
            PATH + "/hide");
    return Templates.steps(list, !ruled, !shown);
  }

  private static String door(Card card) {
    String join =
        switch (card.door()) {
          case OPEN -> "anybody can join";
          case REQUEST -> "anybody can ask to join";
          case INVITATION -> "people join with an invitation";
        };
    return join + (card.readingPublic() ? ", everybody can read." : ", members only can read.");
  }

  @POST
  @Path("rules")
  public Response keepRules() {
    steps.took(actor(), FirstStep.OWNER_RULES);
    return to(PATH + "?done=rules");
  }

  @POST
  @Path("example")
  public Response wantNoExample() {
    steps.took(actor(), FirstStep.OWNER_EXAMPLE);
    return to(PATH + "?done=example");
  }

  @POST
  @Path("hide")
  public Response hide() {
    steps.took(actor(), FirstStep.OWNER_PUT_AWAY);
    return to("/desk");
  }
}
