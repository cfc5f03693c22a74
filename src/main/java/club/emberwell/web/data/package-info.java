/** Data to take along: the page that says how, its files, and one search as a file. */
package club.emberwell.web.data;
