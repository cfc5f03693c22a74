package club.emberwell.tag;

import club.emberwell.entry.EntryKind;
import java.util.Optional;
import java.util.UUID;

/** What a kind of entry that only its author sees shows everybody who finds its tag. */
public interface PublicSide {
  EntryKind kind();

  /** The report an entry of this kind belongs to, whoever may see that. */
  Optional<UUID> report(UUID id);
}
