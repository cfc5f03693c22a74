package club.emberwell.api.view;

import club.emberwell.access.ApiPaths;
import club.emberwell.entry.EntryKind;
import club.emberwell.report.photo.KeptPhotos.Kept;

/** The one photo of an entry that only its author sees; pixels. */
public record KeptPhotoJson(String url, int width, int height) {
  /** Null stays null. */
  public static KeptPhotoJson of(EntryKind kind, Kept photo) {
    return photo == null
        ? null
        : new KeptPhotoJson(
            "%s/%ss/%s/photo".formatted(ApiPaths.BASE, kind.code(), photo.entry()),
            photo.width(),
            photo.height());
  }
}
