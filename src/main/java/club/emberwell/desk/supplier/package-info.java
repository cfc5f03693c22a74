/** Which names of suppliers mean one: {@link club.emberwell.desk.supplier.SupplierSpellings}. */
package club.emberwell.desk.supplier;
