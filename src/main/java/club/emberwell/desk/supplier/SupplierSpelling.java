package club.emberwell.desk.supplier;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.time.Instant;

/**
 * A name that counts as another one's spelling.
 *
 * @param code of the spelling, by which it stands in addresses
 * @param supplier name it counts as
 * @param supplierCode of that
 * @param by name of the moderator who joined them
 * @param number rises with each
 */
public record SupplierSpelling(
    String code,
    String spelling,
    String supplier,
    String supplierCode,
    String by,
    Instant at,
    String reason,
    @JsonIgnore Long number) {}
