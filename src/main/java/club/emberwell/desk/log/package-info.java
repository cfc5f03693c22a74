/** Who did what, when and why: {@link club.emberwell.desk.log.AuditTrail}. */
package club.emberwell.desk.log;
