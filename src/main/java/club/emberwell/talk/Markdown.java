package club.emberwell.talk;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.Document;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Image;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.ListBlock;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.renderer.text.LineBreakRendering;
import org.commonmark.renderer.text.TextContentRenderer;
import org.owasp.html.HtmlPolicyBuilder;
import org.owasp.html.PolicyFactory;

/**
 * Members' texts as HTML: CommonMark with everything that looks like HTML escaped, then a sanitiser
 * with a list of what may pass, so that a defect of the one is caught by the other. Headings and
 * pictures are not drawn: their words stay as text.
 */
public final class Markdown {
  /** Every element that can come out. */
  static final List<String> ELEMENTS =
      List.of("p", "br", "strong", "em", "ul", "ol", "li", "code", "pre", "blockquote", "a");

  private static final Parser PARSER =
      Parser.builder()
          .enabledBlockTypes(
              Set.of(
                  BlockQuote.class,
                  FencedCodeBlock.class,
                  IndentedCodeBlock.class,
                  ListBlock.class))
          .maxOpenBlockParsers(TalkLimits.NESTING)
          .maxInlineNesting(TalkLimits.NESTING)
          .build();

  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder().escapeHtml(true).sanitizeUrls(true).build();

  private static final TextContentRenderer WORDS =
      TextContentRenderer.builder().lineBreakRendering(LineBreakRendering.STRIP).build();

  /** An address that was not let through is empty; a link to nowhere is none. */
  private static final Pattern SOMEWHERE = Pattern.compile(".+", Pattern.DOTALL);

  private static final PolicyFactory POLICY =
      new HtmlPolicyBuilder()
          .allowElements(ELEMENTS.toArray(String[]::new))
          .allowUrlProtocols("http", "https", "mailto")
          .allowAttributes("href")
          .matching(SOMEWHERE)
          .onElements("a")
          .requireRelsOnLinks("nofollow", "ugc", "noopener")
          .toFactory();

  private Markdown() {}

  /**
   * What may be shown of a text.
   *
   * @param text Markdown, already within {@link TalkLimits#TEXT}
   */
  public static SafeHtml render(String text) {
    Node document = PARSER.parse(text);
    document.accept(new WithoutPictures());
    return new SafeHtml(POLICY.sanitize(RENDERER.render(document)));
  }

  /** What may be shown of a text that is no Markdown: its lines, each letter as it was typed. */
  static SafeHtml asTyped(String text) {
    Document document = new Document();
    for (String block : text.strip().split("\\R\\s*\\R")) {
      Paragraph paragraph = new Paragraph();
      document.appendChild(paragraph);
      for (String line : block.split("\\R")) {
        if (paragraph.getFirstChild() != null) {
          paragraph.appendChild(new HardLineBreak());
        }
        paragraph.appendChild(new Text(line));
      }
    }
    return new SafeHtml(POLICY.sanitize(RENDERER.render(document)));
  }

  /** The words of a text alone, in one line. */
  public static String plain(String text) {
    return WORDS.render(PARSER.parse(text));
  }

  /** A picture would tell its host who reads; its description stays. */
  private static final class WithoutPictures extends AbstractVisitor {
    @Override
    public void visit(Image image) {
      visitChildren(image);
      Node child = image.getFirstChild();
      while (child != null) {
        Node next = child.getNext();
        image.insertBefore(child);
        child = next;
      }
      image.unlink();
    }
  }
}
