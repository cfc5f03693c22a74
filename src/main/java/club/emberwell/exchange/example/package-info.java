/**
 * The invented club as an example inside a real one: loaded when an owner wishes it, told apart
 * everywhere by the names of its people, and gone whole when an owner wishes that.
 *
 * <p>Entry point: {@link club.emberwell.exchange.example.ExampleClub}.
 */
package club.emberwell.exchange.example;
