package club.emberwell.web.desk;

import club.emberwell.talk.SafeHtml;
import club.emberwell.web.report.ReportPage;

/**
 * What an item says: one of the three is not null.
 *
 * @param text of a question, an answer or a notice
 * @param photo address of a photo
 */
record ItemContent(ReportPage report, SafeHtml text, String photo) {}
