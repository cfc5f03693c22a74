package club.emberwell.web.outside;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.member.Licence;
import java.time.Instant;

/**
 * An entry in a feed.
 *
 * @param title that stands by itself
 * @param licence under which it may be used, or null where that of the club holds
 * @param html all that a reader of feeds sees of it
 */
record FeedItem(
    EntryRef ref,
    String title,
    String author,
    Licence licence,
    Instant published,
    Instant updated,
    String html) {

  /** Where people read it: a path of this server. */
  String path() {
    return ref.kind().path(ref.id(), null);
  }

  /** What it is, in a word. */
  String kind() {
    return ref.kind() == EntryKind.REPORT ? "Result" : ref.kind().label();
  }
}
