package club.emberwell.talk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What comes out is read again by another parser (jsoup). The list of vectors follows the kinds in
 * OWASP's XSS Filter Evasion Cheat Sheet, written from memory.
 */
class MarkdownTest {
  private static final Set<String> ALLOWED = Set.copyOf(Markdown.ELEMENTS);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "plain|<p>plain</p>",
        "*soft* and **strong**|<p><em>soft</em> and <strong>strong</strong></p>",
        "`G0 <X>`|<p><code>G0 &lt;X&gt;</code></p>",
        "# not a heading|<p># not a heading</p>",
        "<b>bold</b>|<p>&lt;b&gt;bold&lt;/b&gt;</p>",
        "![a lamp](http://x.example/i.png)|<p>a lamp</p>",
        "[here](/reports/1)|<p><a href=\"/reports/1\" rel=\"nofollow ugc noopener\">here</a></p>",
        "[x](javascript:alert(1))|<p>x</p>",
      })
  void theMarksPeopleUseBecomeElements(String markdown, String html) {
    assertEquals(
        Jsoup.parseBodyFragment(html).body().html(),
        Jsoup.parseBodyFragment(Markdown.render(markdown).getMarkup()).body().html());
  }

  @Test
  void listsQuotesAndCodeBlocksKeepTheirShape() {
    String html =
        Markdown.render("> quoted\n\n1. one\n2. two\n\n- a\n- b\n\n```\nG1 F600\n```\n")
            .getMarkup();
    Element body = Jsoup.parseBodyFragment(html).body();
    assertEquals(1, body.select("blockquote > p").size());
    assertEquals(2, body.select("ol > li").size());
    assertEquals(2, body.select("ul > li").size());
    assertEquals("G1 F600\n", body.select("pre > code").first().wholeText());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "<svg/onload=alert(1)>",
        "<a href=\"javascript:alert(1)\">x</a>",
        "[x](javascript:alert(1))",
        "[x](JaVaScRiPt:alert(1))",
        "[x](java&#115;cript:alert(1))",
        "[x](java\tscript:alert(1))",
        "[x](&#x6A;avascript:alert(1))",
        "[x](data:text/html;base64,PHNjcmlwdD4=)",
        "[x](vbscript:msgbox(1))",
        "<javascript:alert(1)>",
        "[x]: javascript:alert(1)\n\n[x]",
        "![x](javascript:alert(1))",
        "![x\" onerror=\"alert(1)](http://x.example)",
        "[x](http://a.example \"title\" onmouseover=\"alert(1)\")",
        "<iframe src=//x.example></iframe>",
        "<form action=/sign-out method=post><button>",
        "<p hx-get=\"/sign-out\" hx-trigger=load>",
        "<div data-hx-post=/x>",
        "<style>*{display:none}</style>",
        "</p></main><base href=//x.example>",
        "``` <img onerror=alert(1)>\ncode\n```",
        "<!--><img src=x onerror=alert(1)>-->",
        "<![CDATA[<script>alert(1)</script>]]>",
        "<math><mi//xlink:href=\"data:x,<script>alert(1)</script>\">",
        "<a\u0000href=javascript:alert(1)>x",
        "[a](<javascript:alert(1)>)",
        "<http://x.example/\" onmouseover=\"alert(1)>",
        "\u2028<script>",
        "{{7*7}} {#if x} {cdi:page.handle} {inject:csrf.token}",
      })
  void nothingComesThroughThatRunsOrLoads(String hostile) {
    check(hostile);
  }

  @Test
  void noMixtureOfMarksAndMarkupComesThrough() {
    String[] pieces = {
      "<",
      ">",
      "\"",
      "'",
      "&",
      "script",
      "img src=x onerror=alert(1)",
      "[",
      "]",
      "(",
      ")",
      "*",
      "**",
      "_",
      "`",
      "```",
      "\n",
      "\n\n",
      "> ",
      "- ",
      "1. ",
      "    ",
      "javascript:",
      "http://x",
      "#",
      "!",
      "\\",
      "<!--",
      "-->",
      "&#x6A;",
      "\u0000",
      "\ud83d\ude00",
      "href=",
      "hx-get=",
      "<a ",
      "style=",
      "/>",
      "</p>",
      "<p>",
      "{",
      "}",
      "\t",
      "\r"
    };
    Random random = new Random(20261125);
    for (int i = 0; i < 4000; i++) {
      StringBuilder text = new StringBuilder();
      int length = 1 + random.nextInt(40);
      for (int j = 0; j < length; j++) {
        text.append(pieces[random.nextInt(pieces.length)]);
      }
      check(text.toString());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"> ", "[", "*a ", "- ", "`", "![", "**_", "((", "<", "&#", "[a](", "1. "})
  void theLongestTextOfOneMarkIsDrawnSoon(String mark) {
    String text = mark.repeat(TalkLimits.TEXT / mark.length());
    Assertions.assertTimeout(Duration.ofSeconds(5), () -> check(text));
  }

  private static void check(String markdown) {
    String html = Markdown.render(markdown).getMarkup();
    for (Element element : Jsoup.parseBodyFragment(html).body().select("body *")) {
      assertTrue(
          ALLOWED.contains(element.tagName()), () -> element.tagName() + " from " + markdown);
      for (Attribute attribute : element.attributes()) {
        boolean known =
            element.tagName().equals("a") && List.of("href", "rel").contains(attribute.getKey());
        assertTrue(known, () -> attribute + " from " + markdown);
        if (attribute.getKey().equals("href")) {
          String to = attribute.getValue().strip().toLowerCase(Locale.ROOT);
          boolean relative = !to.matches("[a-z][a-z0-9+.-]*:.*");
          assertTrue(relative || to.matches("(?s)(https?|mailto):.*"), () -> to);
        }
      }
      if (element.tagName().equals("a") && element.hasAttr("href")) {
        assertEquals("nofollow ugc noopener", element.attr("rel"));
      }
    }
    assertFalse(html.toLowerCase(Locale.ROOT).contains("<script"), html);
  }
}
