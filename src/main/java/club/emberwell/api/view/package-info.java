/** How entries look in JSON: shared by every resource that answers them. */
package club.emberwell.api.view;
