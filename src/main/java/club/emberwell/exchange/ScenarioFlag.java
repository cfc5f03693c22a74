package club.emberwell.exchange;

import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.remark.Coded;
import java.time.Instant;
import java.util.UUID;

/** One line of {@code desk.jsonl}: what somebody says is wrong with an entry. */
record ScenarioFlag(String by, Instant at, String kind, UUID entry, String reason, String note) {
  EntryRef ref() {
    return new EntryRef(Coded.of(EntryKind.class, kind).orElseThrow(), entry);
  }

  Flags.Raised raised() {
    return new Flags.Raised(reason, note, at);
  }
}
