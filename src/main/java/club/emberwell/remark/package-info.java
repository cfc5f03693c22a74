/** What was noticed while reading an entry. */
package club.emberwell.remark;
