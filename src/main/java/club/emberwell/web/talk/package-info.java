/** Questions, answers, notices, watches, the inbox and feeds as pages. */
package club.emberwell.web.talk;
