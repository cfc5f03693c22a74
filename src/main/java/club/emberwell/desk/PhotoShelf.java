package club.emberwell.desk;

import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.report.Photos;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Pictures; held and removed ones are out of sight alike and can be brought back. */
@ApplicationScoped
class PhotoShelf implements Shelf {
  private final Photos photos;

  PhotoShelf(Photos photos) {
    this.photos = photos;
  }

  @Override
  public boolean holds(ItemKind kind) {
    return kind == ItemKind.PHOTO;
  }

  @Override
  public void move(Actor actor, UUID id, Action action, String why) {
    photos.hide(actor, id, action == Action.HOLD || action == Action.REMOVE, why);
  }

  @Override
  public int version(Actor actor, UUID id) {
    return 0;
  }

  @Override
  public void rewrite(Actor actor, UUID id, int version, String why) {
    throw new EntryForbidden("A picture has one version.");
  }
}
