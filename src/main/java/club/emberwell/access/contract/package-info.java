/**
 * The API's description as it is served: {@link club.emberwell.access.contract.ApiDocument}, for
 * programs and for the page about it.
 */
package club.emberwell.access.contract;
