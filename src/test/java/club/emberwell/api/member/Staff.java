package club.emberwell.api.member;

import static io.restassured.RestAssured.given;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import club.emberwell.member.door.Doors;
import club.emberwell.member.door.NewMember;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.UUID;

/** Makes invented people with a role, however the door stands. */
@ApplicationScoped
public class Staff {
  private final Accounts accounts;
  private final Doors doors;
  private final Members members;

  Staff(Accounts accounts, Doors doors, Members members) {
    this.accounts = accounts;
    this.doors = doors;
    this.members = members;
  }

  /** Somebody of this role with a token. */
  public Person person(Role role) {
    String handle = People.freshHandle();
    doors.enrol(new NewMember(handle, null, People.PASSWORD), role);
    var token =
        People.json(Map.of("handle", handle, "password", People.PASSWORD, "label", "test"))
            .post("/api/v1/tokens")
            .then()
            .statusCode(201)
            .extract();
    String id = members.byHandle(handle).orElseThrow().id().toString();
    return new Person(handle, id, token.path("token"), token.path("id"));
  }

  /** Gives somebody another role behind the club's back. */
  public void role(Person person, Role role) {
    UUID id = UUID.fromString(person.id());
    accounts.changeRole(members.byId(id).orElseThrow().actor(), id, role, "test");
  }

  static String version() {
    return given().get("/api/v1/club").header("ETag");
  }
}
