/**
 * How what the program knows becomes JSON and is read from it: {@link
 * club.emberwell.api.json.ClubModule} for the types, {@link club.emberwell.api.json.StrictJson} for
 * the manners.
 */
package club.emberwell.api.json;
