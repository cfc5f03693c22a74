/**
 * How people come in: {@link club.emberwell.member.door.Doors} takes in whoever comes, by {@link
 * club.emberwell.member.door.Invitations}, {@link club.emberwell.member.door.JoinRequests} or an
 * open door; {@link club.emberwell.member.door.FirstOwner} comes before all.
 */
package club.emberwell.member.door;
