package club.emberwell.member;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.hibernate.annotations.Generated;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** The stored account. Services hand out {@link MemberView} instead. */
@Entity
@Table(name = "member")
class Member {
  @Id UUID id;

  /** A small ordinal that columns and voices use instead of the id. */
  @Generated
  @Column(insertable = false, updatable = false)
  long number;

  String handle;
  String email;

  @Column(name = "email_confirmed_at")
  Instant emailConfirmedAt;

  @Column(name = "password_hash")
  String passwordHash;

  String role;
  String status;

  @Column(name = "number_style")
  String numberStyle = NumberStyles.ANY;

  String locale;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, String> units = new HashMap<>();

  @Column(name = "created_at")
  Instant createdAt;

  @Version long version;
}
