package club.emberwell.web.frame;

import club.emberwell.web.frame.PageFrame.Place;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** The places of the desk, as a moderator or an owner sees them. */
@Named("deskPlaces")
@RequestScoped
public class DeskPlaces {
  @Inject UriInfo uri;
  @Inject PageFrame page;

  /** All of them, the current one marked. */
  public List<Place> getAll() {
    List<Place> places = new ArrayList<>(queues());
    places.addAll(getTools());
    return places;
  }

  /** Whether a decision led here. */
  public boolean isDone() {
    return "yes".equals(done()) || getUndo() != null;
  }

  /** The decision about many things that led here, to be undone in one; null where none did. */
  public UUID getUndo() {
    return SentForm.readId(done());
  }

  private String done() {
    return uri.getQueryParameters().getFirst("done");
  }

  /** Where something can wait. */
  private List<Place> queues() {
    return List.of(
        place("/desk/waiting", "Waiting"),
        place("/desk/flags", "Flags"),
        place("/desk/notes", "Notes"),
        place("/desk/words", "Words"),
        place("/desk/cautions", "Cautions"),
        place("/desk/requests", "Requests"));
  }

  /** Where nothing waits. */
  public List<Place> getTools() {
    List<Place> tools = new ArrayList<>();
    tools.add(place("/desk/members", "Members"));
    tools.add(place("/desk/terms", "Terms"));
    tools.add(place("/desk/suppliers", "Suppliers"));
    tools.add(place("/desk/rules", "Rules"));
    tools.add(place("/desk/undos", "Undo"));
    tools.add(place("/desk/log", "Log"));
    tools.add(place("/desk/invitations", "Invitations"));
    if (page.isOwner()) {
      tools.add(place("/desk/club/first-steps", "First steps"));
      tools.add(place("/desk/club", "The club"));
      tools.add(place("/desk/club/example", "Example club"));
      tools.add(place("/desk/club/people", "People in charge"));
      tools.add(place("/desk/club/webhooks", "Webhooks"));
      tools.add(place("/desk/club/backups", "Backups"));
    }
    return tools;
  }

  private Place place(String href, String label) {
    String path = uri.getPath();
    // what lies below the club's page has places of its own
    boolean below = path.startsWith(href + "/") && !href.equals("/desk/club");
    return new Place(href, label, null, path.equals(href) || below);
  }
}
