package club.emberwell.report;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A report as interpreted, whole and detached: what the index, the ranges and the pages read.
 *
 * @param number small integer identity of the report, for columns
 * @param memberNumber small integer identity of its author
 * @param machineNumber of the machine, 0 = described in the report only
 * @param material slug of the filed material, null while the words wait for filing
 * @param materialWritten the author's words; the same for coating and colour
 * @param photos how many pictures it carries
 */
public record ReportSnapshot(
    UUID id,
    long number,
    int version,
    ReportState state,
    UUID memberId,
    long memberNumber,
    String memberHandle,
    UUID machineId,
    long machineNumber,
    String machineName,
    Laser laser,
    String material,
    String materialWritten,
    String coating,
    String coatingWritten,
    String colour,
    String colourWritten,
    Process process,
    Double thicknessMm,
    String lot,
    String controllerVersion,
    String notes,
    UUID repeatOf,
    int photos,
    Instant createdAt,
    Instant updatedAt,
    List<TrialSnapshot> trials) {}
