package club.emberwell.report;

/**
 * What a report's snapshot takes from other tables.
 *
 * @param machineNumber null where the laser is described in the report
 */
record ReportNames(
    Long memberNumber,
    String memberHandle,
    Long machineNumber,
    String machineName,
    String machineModel,
    Long photos,
    Long comments) {}
