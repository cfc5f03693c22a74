package club.emberwell.web.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A moderator joins names of one supplier and parts them, in a browser without scripts. */
@QuarkusTest
class SpellingPagesTest {
  @Inject Staff staff;

  /** Nobody else's in this database. */
  private final String name = "Blanks " + UUID.randomUUID();

  private final String other = name + " Ltd";

  private static String main(Browser browser) {
    return browser.page().selectFirst("main").text();
  }

  private static void lot(Person by, String supplier) {
    by.makes(
        "lots",
        Map.of(
            "supplier",
            supplier,
            "material",
            "slate",
            "received",
            20,
            "usable",
            18,
            "shared",
            true));
  }

  private static String linked(Browser browser, String text) {
    return browser.page().select("main li a").stream()
        .filter(a -> a.text().startsWith(text))
        .findFirst()
        .orElseThrow()
        .attr("href");
  }

  @Test
  void aModeratorJoinsFromTheSuppliersPageAndPartsAtTheDesk() {
    List<Person> three = Stream.generate(People::join).limit(3).toList();
    three.forEach(by -> lot(by, name));
    three.forEach(by -> lot(by, other));
    Browser desk = Browser.of(staff.person(Role.MODERATOR));
    desk.get("/suppliers?q=" + other.replace(" ", "+")).tidy();
    String old = linked(desk, other);
    desk.get(old).tidy();
    desk.get(desk.page().selectFirst("main a[href*='/desk/suppliers/join']").attr("href")).tidy();
    assertEquals(other, desk.page().selectFirst("input[name=spelling]").val());
    // spelled much alike, so it is offered
    desk.get(linked(desk, name)).tidy();
    assertEquals(name, desk.page().selectFirst("input[name=supplier]").val());
    desk.send("main form", Map.of("reason", ""));
    assertEquals(422, desk.status());
    assertNotNull(desk.page().selectFirst("[name=reason][aria-invalid=true]"));
    assertEquals(other, desk.page().selectFirst("input[name=spelling]").val(), "nothing is lost");
    desk.send("main form", Map.of("reason", "One shop."));
    desk.follow().tidy();
    assertTrue(main(desk).contains(other + " counts as " + name), main(desk));

    Browser reader = Browser.of(three.get(0));
    reader.get(old);
    assertEquals(303, reader.status());
    reader.follow().tidy();
    assertTrue(main(reader).contains("6, shared by 3 members"), main(reader));
    assertTrue(main(reader).contains("Also spelled " + other), main(reader));
    assertNull(reader.page().selectFirst("main a[href^='/desk']"));
    reader.get(reader.page().selectFirst("main a[href^='/lots/order']").attr("href")).tidy();
    assertEquals(name, reader.page().selectFirst("select[name=lots] option[selected]").val());
    assertEquals(
        1,
        reader.page().select("select[name=lots] option").stream()
            .filter(option -> option.text().startsWith(name))
            .count(),
        "one choice for both names");
    reader.get("/lots");
    assertTrue(main(reader).contains(other), "what one typed stays");

    desk.get(linked(desk, "Part them: " + other)).tidy();
    desk.send("main form", Map.of("reason", "Two shops."));
    desk.follow().tidy();
    assertFalse(main(desk).contains(other + " counts as"), main(desk));
    assertEquals(200, reader.get(old).status());
    assertTrue(main(reader).contains("3, shared by 3 members"), main(reader));
  }

  @Test
  void theListIsNarrowedAndLeafed() {
    List<Person> three = Stream.generate(People::join).limit(3).toList();
    for (int i = 0; i < 31; i++) {
      String one = name + " no " + i;
      three.forEach(by -> lot(by, one));
    }
    Browser reader = Browser.of(three.get(0));
    reader.get("/suppliers?q=" + name.toUpperCase().replace(" ", "+")).tidy();
    assertEquals(30, reader.page().select("main ol > li").size());
    reader.get(reader.page().selectFirst("main nav a[rel=next]").attr("href")).tidy();
    assertEquals(1, reader.page().select("main ol > li").size());
    assertNotNull(reader.page().selectFirst("main nav a[rel=prev]"));
    reader.get("/suppliers?q=" + name.replace(" ", "+") + "+nobody").tidy();
    assertTrue(main(reader).contains("We know no supplier with"), main(reader));
  }
}
