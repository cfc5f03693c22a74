package club.emberwell.api.writes;

import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * That it is truly the owner.
 *
 * @param password the owner's own
 */
@Schema(
    name = "OwnerConfirmation",
    requiredProperties = {"password"})
public record PasswordAgain(String password) {}
