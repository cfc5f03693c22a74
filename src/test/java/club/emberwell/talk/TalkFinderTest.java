package club.emberwell.talk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.EntryKind;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.search.query.SearchQuery;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class TalkFinderTest {
  @Inject TalkService talk;
  @Inject TalkFinder finder;
  @Inject Club club;

  private Actor ada;

  @BeforeEach
  void ada() {
    ada = club.member();
  }

  private TalkEntry question(String title, String text, Ties ties) {
    TalkEntry entry = talk.post(ada, EntryKind.QUESTION, Club.posting(title, text, ties)).entry();
    finder.show(entry);
    return entry;
  }

  private static List<UUID> ids(List<TalkEntry> entries) {
    return entries.stream().map(TalkEntry::id).toList();
  }

  private List<UUID> about(String facet, String value) {
    return ids(finder.about(SearchQuery.everything().withFacet(facet, List.of(value))));
  }

  @Test
  void aQuestionIsFoundByItsWordsItsTiesAndItsAnswers() {
    TalkEntry asked =
        question("Quibbling zebrano splinters", "The edge frays.", Club.about("slate"));
    assertEquals(
        List.of(asked.id()),
        ids(finder.find(EntryKind.QUESTION, "zebrano", false, Part.FIRST).rows()));
    assertTrue(
        ids(finder.find(EntryKind.QUESTION, "zebrano slate", false, Part.FIRST).rows())
            .contains(asked.id()));
    assertEquals(List.of(), finder.find(EntryKind.NOTICE, "zebrano", false, Part.FIRST).rows());
    TalkEntry answer =
        talk.answer(
                club.member(),
                asked.id(),
                TalkPosting.of(null, WrittenTalk.untitled("Use wollemi tape.")))
            .entry();
    finder.show(answer);
    assertEquals(
        List.of(asked.id()),
        ids(finder.find(EntryKind.QUESTION, "wollemi", false, Part.FIRST).rows()));
  }

  @Test
  void wordsAndUnansweredCombine() {
    TalkEntry open = question("Bandicoot halo, nobody knows", "Text", Ties.NONE);
    TalkEntry told = question("Bandicoot halo, somebody knew", "Text", Ties.NONE);
    Actor ben = club.member();
    TalkEntry answer =
        talk.answer(ben, told.id(), TalkPosting.of(null, WrittenTalk.untitled("Slow down.")))
            .entry();
    finder.show(answer);
    assertEquals(List.of(open.id()), unanswered("bandicoot"));
    assertEquals(2, finder.find(EntryKind.QUESTION, "bandicoot", false, Part.FIRST).rows().size());
    talk.withdraw(ben, answer.id(), null);
    finder.show(answer);
    assertEquals(Set.of(open.id(), told.id()), Set.copyOf(unanswered("bandicoot")));
  }

  private List<UUID> unanswered(String text) {
    return ids(finder.find(EntryKind.QUESTION, text, true, Part.FIRST).rows());
  }

  @ParameterizedTest
  @CsvSource({"quokkafied", "QUOKKAFIED", "quokkafeid", "quokk"})
  void caseATypoAndABeginningFindTheSame(String typed) {
    TalkEntry asked = question("A quokkafied finish on ply", "How?", Ties.NONE);
    assertTrue(
        ids(finder.find(EntryKind.QUESTION, typed, false, Part.FIRST).rows()).contains(asked.id()));
  }

  @Test
  void spellingsOfAMaterialFindWhatIsTiedToIt() {
    TalkEntry asked = question("Wobbegong stripes again", "Banding.", Club.about("birch-plywood"));
    assertTrue(
        ids(finder.find(EntryKind.QUESTION, "wobbegong birch ply", false, Part.FIRST).rows())
            .contains(asked.id()));
  }

  @Test
  void besideARangeStandsWhatConcernsItAndNothingAboutAnotherMaterial() {
    TalkEntry cork = question("Does it smoulder long after?", "Text", Club.about("cork"));
    TalkEntry leather = question("Smell that stays for days", "Text", Club.about("leather"));
    TalkEntry untied = question("Cork coasters curl when wet", "Text", Ties.NONE);
    List<UUID> beside = about("material", "cork");
    assertTrue(beside.contains(cork.id()));
    assertTrue(beside.contains(untied.id()));
    assertFalse(beside.contains(leather.id()));
    assertEquals(List.of(), finder.about(SearchQuery.everything()));
  }

  @Test
  void aTieToAnotherSourceContradictsAndNoneDoesNot() {
    Ties fibre = new Ties("brass", null, "fibre", null, null, null, null);
    TalkEntry tied = question("Brass turns pink at the rim", "Text", fibre);
    TalkEntry open = question("Brass blanks with a lacquer", "Text", Club.about("brass"));
    SearchQuery brass = SearchQuery.everything().withFacet("material", List.of("brass"));
    List<UUID> uv = ids(finder.about(brass.withFacet("source", List.of("uv"))));
    assertTrue(uv.contains(open.id()));
    assertFalse(uv.contains(tied.id()));
    List<UUID> same = ids(finder.about(brass.withFacet("source", List.of("fibre"))));
    assertEquals(tied.id(), same.get(0));
  }

  @Test
  void aNoticeOnAControllerVersionStandsBesideItsResults() {
    Ties ties = new Ties(null, null, null, null, null, "7.31.2", null);
    TalkEntry notice =
        talk.post(
                ada,
                EntryKind.NOTICE,
                Club.posting("Controller version 7.31.2 changed overscan", "Measure anew.", ties))
            .entry();
    finder.show(notice);
    assertEquals(List.of(notice.id()), about("controllerVersion", "7.31.2"));
    assertFalse(about("controllerVersion", "6.1").contains(notice.id()));
  }

  @Test
  void aTextBeingTypedFindsQuestionsThatShareItsRareWords() {
    TalkEntry asked = question("Ghostly kakapo outline beside engraved letters", "Text", Ties.NONE);
    List<UUID> similar = ids(finder.similar("why is there a kakapo outline next to my letters"));
    assertEquals(asked.id(), similar.get(0));
    assertEquals(List.of(), finder.similar(""));
    assertTrue(finder.similar("the ".repeat(400)).size() <= TalkLimits.BESIDE);
  }

  @Test
  void whatIsWithdrawnIsFoundNoMore() {
    TalkEntry asked = question("Temporary numbat question", "Text", Ties.NONE);
    talk.withdraw(ada, asked.id(), null);
    finder.show(asked);
    assertEquals(List.of(), finder.find(EntryKind.QUESTION, "numbat", false, Part.FIRST).rows());
  }

  @Test
  void aLookIsOneStatement() {
    question("Statement counting bilby", "Text", Ties.NONE);
    assertEquals(1, StatementCount.of(() -> finder.similar("counting bilby")).size());
    for (boolean unanswered : new boolean[] {false, true}) {
      assertEquals(
          1,
          StatementCount.of(() -> finder.find(EntryKind.QUESTION, "bilby", unanswered, Part.FIRST))
              .size());
    }
  }
}
