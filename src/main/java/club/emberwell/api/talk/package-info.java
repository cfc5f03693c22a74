/** Questions, answers, notices and watches over JSON. */
package club.emberwell.api.talk;
