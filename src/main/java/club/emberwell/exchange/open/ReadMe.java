package club.emberwell.exchange.open;

import club.emberwell.quantity.UtcTime;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;

/** The first file a person opens. */
final class ReadMe {
  private static final String TEXT =
"""
Laser trials of %1$s
Made %2$s: %3$d trials in %4$d reports of %5$d members. From %6$s/data

trials.csv        one row a trial; what each column is stands in datapackage.json
reports.ndjson    the same as JSON, one report a line
words.jsonld      materials, coatings, colours, defects and codes (SKOS)
datapackage.json  describes all of it (Data Package, datapackage.org)

Numbers are in the unit that datapackage.json gives (UCUM). A column "...Written" has what the
member typed. "voice" and "machine" tell members and machines apart within this file only.
In trials.csv a text that a spreadsheet would run as a formula has an apostrophe in front.

Licences: %7$s. Each record says its own, in "licence". Where "author" is empty, name the club.

R         trials <- read.csv("trials.csv")
Python    trials = pandas.read_csv("trials.csv")

To check that nothing was changed, in this folder:

  sha256sum -c SHA256SUMS
  openssl pkeyutl -verify -pubin -inkey signing-key.pem -rawin -in SHA256SUMS -sigfile SHA256SUMS.sig

Compare signing-key.pem with %6$s/data/signing-key.pem. The signature is Ed25519 (RFC 8032).

This is what members say they did, not a promise and not a recommendation. Results that were
withdrawn since are not in newer packages: fetch a new one from time to time.
""";

  private ReadMe() {}

  static byte[] of(DataPackage made, String clubName, String publicUrl) {
    String licences =
        made.licences().stream()
            .map(licence -> licence.code() + " (" + licence.url() + ")")
            .collect(Collectors.joining(", "));
    DataPackage.Counts counts = made.counts();
    return TEXT.formatted(
            clubName,
            UtcTime.of(made.madeAt()),
            counts.trials(),
            counts.reports(),
            counts.members(),
            publicUrl,
            licences.isEmpty() ? "none yet" : licences)
        .getBytes(StandardCharsets.UTF_8);
  }
}
