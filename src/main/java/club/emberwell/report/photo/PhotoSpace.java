package club.emberwell.report.photo;

import club.emberwell.member.club.ClubOptions;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.UUID;

/** How much of a member's pictures is kept, whatever they belong to, and how much may be. */
@ApplicationScoped
public class PhotoSpace {
  private final SpaceRepository rows;
  private final ClubOptions club;

  PhotoSpace(SpaceRepository rows, ClubOptions club) {
    this.rows = rows;
    this.club = club;
  }

  /**
   * Bytes.
   *
   * @param most as the club decided
   */
  public record Space(long used, long most) {
    private static final double MEGABYTE = 1024 * 1024;

    public boolean isFull() {
      return used >= most;
    }

    /** As people read it: 12.3 of 500 MB. */
    public String said() {
      return "%.1f of %.0f MB".formatted(used / MEGABYTE, most / MEGABYTE);
    }
  }

  @Transactional
  public Space of(UUID member) {
    return new Space(rows.used(member), club.photoBytes());
  }

  /**
   * Lets another picture in.
   *
   * @throws EntryRefused where the member's space is full
   */
  @Transactional
  public void need(UUID member) {
    Space space = of(member);
    if (space.isFull()) {
      throw new EntryRefused(
          RemarkId.TOO_MANY_PHOTOS,
          "/photo",
          "Your space for photos is full: %s used. Remove a photo first, or ask an owner of the club for more."
              .formatted(space.said()));
    }
  }
}
