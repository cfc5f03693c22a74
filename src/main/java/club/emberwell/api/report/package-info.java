/** Reports over JSON: post, read, edit, withdraw, repeat, history, pictures. */
package club.emberwell.api.report;
