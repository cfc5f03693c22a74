/**
 * The API's description, made while the program is built from the resources' annotations and the
 * program's own catalogues: {@link club.emberwell.api.contract.ContractOpenApi} is the last to work
 * on it, {@link club.emberwell.api.contract.DocumentResource} serves it.
 */
package club.emberwell.api.contract;
