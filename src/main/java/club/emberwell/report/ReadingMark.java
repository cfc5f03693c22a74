package club.emberwell.report;

/** Up to which catalog and interpreter all reports have been read. */
record ReadingMark(long catalogVersion, int interpreterVersion) {}
