/** Questions, answers, notices, and watches over what is new. */
package club.emberwell.talk;
