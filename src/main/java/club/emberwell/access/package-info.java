/**
 * Who may call what: credentials, errors, headers, cross-site guards, and the account resources.
 *
 * <p>Entry points: {@link club.emberwell.access.CurrentActor} is who asks; {@link
 * club.emberwell.access.CredentialMechanism} finds out, {@link club.emberwell.access.ScopeGate} and
 * {@link club.emberwell.access.WritePace} hold them to what they may; {@link
 * club.emberwell.access.ErrorMappers} and {@link club.emberwell.access.Problems} say what a refusal
 * becomes.
 */
package club.emberwell.access;
