package club.emberwell.web.plot;

/**
 * What a picture is called and shows, for those who do not see it.
 *
 * @param id unique in the page, for title and description
 */
public record Caption(String id, String title, String description) {}
