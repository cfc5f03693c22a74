package club.emberwell.search.talk;

import jakarta.enterprise.context.ApplicationScoped;

/** Lets the talk index follow the database, which it does not do by itself in tests. */
@ApplicationScoped
public class TalkIndexNow {
  private final TalkIndex index;

  TalkIndexNow(TalkIndex index) {
    this.index = index;
  }

  /** Takes in everything committed so far. */
  public void catchUp() {
    index.upToDate();
  }
}
