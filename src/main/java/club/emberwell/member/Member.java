package club.emberwell.member;

import club.emberwell.quantity.NumberStyle;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
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
public class Member {
  @Id public UUID id;

  /** A small ordinal that columns and voices use instead of the id. */
  @Generated
  @Column(insertable = false, updatable = false)
  long number;

  public String handle;
  public String email;

  @Column(name = "email_confirmed_at")
  public Instant emailConfirmedAt;

  @Column(name = "password_hash")
  public String passwordHash;

  @Enumerated(EnumType.STRING)
  public Role role;

  @Enumerated(EnumType.STRING)
  public MemberStatus status;

  @Column(name = "number_style")
  public NumberStyle numberStyle = NumberStyle.ANY;

  @JdbcTypeCode(SqlTypes.JSON)
  public Map<String, String> units = new HashMap<>();

  /** Of what is posted from now on; null = what the club decided. */
  @Enumerated(EnumType.STRING)
  public Licence licence;

  /** Whether data that leave the club name this member as author. */
  public boolean named = true;

  @Column(name = "created_at")
  public Instant createdAt;

  @Version public long version;

  public boolean active() {
    return status == MemberStatus.ACTIVE;
  }
}
