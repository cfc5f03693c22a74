package club.emberwell.api.contract;

/** The parts of the API, in the order in which somebody meets them. */
public enum ApiTag {
  MEMBERS("Members", "Joining, one's own account, one's data."),
  TOKENS("Tokens", "How a program gets to act in somebody's name, and for how much."),
  CLUB("Club", "What the club is and decided; invitations, requests to join, roles."),
  MACHINES("Machines", "The lasers on one's own bench."),
  EYEWEAR("Eyewear", "One's own laser glasses by what is printed on them."),
  ROOMS("Rooms", "Where one works: its air, and what is checked there."),
  REPORTS("Reports", "Results: one trial with its settings, its picture, and repeats by others."),
  CONSENSUS("Consensus", "What the right trials of many members say together about one work."),
  QUANTITIES("Quantities", "Reading a quantity as people write it; what follows from settings."),
  VOCABULARY("Vocabulary", "Materials, coatings, colours and defects with their cautions."),
  GRIDS("Grids", "Test grids: planned, burned, judged cell by cell."),
  SAMPLES("Samples", "Physical test pieces, and where they lie."),
  TAGS("Tags", "Short codes on physical things."),
  LOTS("Lots", "Deliveries of blanks, their suppliers, and how many to order."),
  RECIPES("Recipes", "Whole settings kept for one's own jobs, in every revision."),
  FIXTURES("Fixtures", "What pieces lie in while they are burned, and how long a batch takes."),
  BENCH("Bench", "All that lies on one's own bench as one file, and back."),
  TALK("Talk", "Questions, answers, notices, and comments under reports."),
  WATCHES("Watches", "Kept searches that tell of new results."),
  FLAGS("Flags", "Telling the moderators that something is wrong."),
  DESK("Desk", "What moderators see and decide."),
  WEBHOOKS("Webhooks", "Being called when something happens."),
  DATA("Data", "The whole public knowledge base, to take away."),
  DESCRIPTION("Description", "This description itself.");

  private final String label;
  private final String about;

  ApiTag(String label, String about) {
    this.label = label;
    this.about = about;
  }

  public String label() {
    return label;
  }

  public String about() {
    return about;
  }
}
