/** Reports as written and as interpreted, their trials, revisions and change rows. */
package club.emberwell.report;
