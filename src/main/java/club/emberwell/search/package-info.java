/** The only user of Lucene: the node's own disposable index of trials. */
package club.emberwell.search;
