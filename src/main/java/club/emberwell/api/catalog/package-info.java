/** The vocabulary over JSON. */
package club.emberwell.api.catalog;
