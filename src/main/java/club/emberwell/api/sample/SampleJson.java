package club.emberwell.api.sample;

import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.sample.Sample;
import club.emberwell.sample.WrittenSample;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A sample.
 *
 * @param title what lists call it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record SampleJson(
    UUID id,
    int version,
    EntryState state,
    Label tag,
    String title,
    @JsonUnwrapped WrittenSample written,
    @JsonUnwrapped Times times) {
  /**
   * What stands on its label.
   *
   * @param url what the square on the label holds
   */
  record Label(String code, String url) {}

  static SampleJson of(Sample sample, String url) {
    Entry.Times at = sample.entry().times();
    return new SampleJson(
        sample.id(),
        sample.version(),
        sample.entry().state(),
        new Label(sample.tag().text(), url),
        sample.title(),
        sample.written(),
        new Times(at.created(), at.updated()));
  }
}
