package club.emberwell.report.photo;

/**
 * A picture as we keep it: upright, re-encoded as JPEG, nothing of the sender's file left.
 *
 * @param picture the large size
 * @param middle between the two; null where the large size is no larger
 * @param thumb the small size
 */
record CleanPicture(int width, int height, byte[] picture, byte[] middle, byte[] thumb) {}
