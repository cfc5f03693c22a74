/**
 * Who may call what: credentials, errors, headers, cross-site guards, and the account resources.
 *
 * <p>Entry points: {@link club.emberwell.access.CurrentActor} is who asks; {@link
 * club.emberwell.access.CredentialMechanism} finds out, {@link club.emberwell.access.ScopeGate} and
 * {@link club.emberwell.access.WritePace} hold them to what they may; {@link
 * club.emberwell.access.ErrorMappers} says what a refusal becomes, of the kinds in {@code problem}.
 */
package club.emberwell.access;
