package club.emberwell.api.view;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What something is about: an entry, by its kind and id.
 *
 * @param title what lists call it
 * @param path where a person reads it, on this server
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ItemJson(EntryKind kind, UUID id, @Nullable String title, @Nullable String path) {
  public static ItemJson of(Entry entry) {
    return new ItemJson(entry.kind(), entry.id(), entry.title(), entry.path());
  }
}
