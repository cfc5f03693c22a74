/**
 * Who may call what: credentials, errors, headers, cross-site guards, and the account resources.
 */
package club.emberwell.access;
