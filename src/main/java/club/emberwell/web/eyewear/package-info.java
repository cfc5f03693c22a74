/** Pages of one's glasses, and of what they do for one's machines. */
package club.emberwell.web.eyewear;
