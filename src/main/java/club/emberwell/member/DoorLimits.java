package club.emberwell.member;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import io.smallrye.config.WithName;
import java.time.Duration;

/** Every limit of the ways into the club. */
@ConfigMapping(prefix = "emberwell.limits.door")
public interface DoorLimits {
  /** How long an invitation works at most, and unless said otherwise, in days. */
  @WithDefault("90")
  int invitationDaysMax();

  @WithDefault("14")
  int invitationDays();

  /** How many people one invitation lets in at most. */
  @WithDefault("200")
  int invitationUsesMax();

  /** Invitations one moderator can have open at a time. */
  @WithDefault("50")
  int invitationsOpenMax();

  @WithDefault("120")
  int invitationNoteMax();

  /** Characters of what somebody says who asks to come in. */
  @WithDefault("1000")
  int requestTextMax();

  /** Characters of a reason. */
  @WithDefault("500")
  int reasonMax();

  @WithDefault("80")
  int clubNameMax();

  @WithDefault("600")
  int licenceMax();

  @WithDefault("2000")
  int notesMax();

  /** How long the code of the first owner works. */
  @WithDefault("24H")
  Duration ownerCodeLife();

  @WithDefault("1H")
  Duration resetLinkLife();

  @WithDefault("48H")
  Duration confirmLinkLife();

  /** How fresh a sign-in must be where no password can prove a person. */
  @WithDefault("10M")
  Duration freshSignIn();

  /** Pages of lists. */
  @WithDefault("100")
  int pageSize();

  /** Codes tried from one address. */
  @WithName("code-address")
  CodeAddress codeAddress();

  /** Links asked for from one address. */
  @WithName("reset-address")
  ResetAddress resetAddress();

  /** Links asked for one mail address. */
  @WithName("reset-account")
  ResetAccount resetAccount();

  /** Invitations made by one member. */
  @WithName("invite")
  Invite invite();

  /** Defaults for codes and links that are tried. */
  interface CodeAddress extends MemberLimits.Rule {
    @Override
    @WithDefault("20")
    int free();

    @Override
    @WithDefault("2S")
    Duration first();

    @Override
    @WithDefault("15M")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }

  /** Defaults for asking from one address. */
  interface ResetAddress extends MemberLimits.Rule {
    @Override
    @WithDefault("10")
    int free();

    @Override
    @WithDefault("30S")
    Duration first();

    @Override
    @WithDefault("1H")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }

  /** Defaults for one mail address: nobody's inbox is filled by a stranger. */
  interface ResetAccount extends MemberLimits.Rule {
    @Override
    @WithDefault("3")
    int free();

    @Override
    @WithDefault("10M")
    Duration first();

    @Override
    @WithDefault("6H")
    Duration longest();

    @Override
    @WithDefault("24H")
    Duration window();
  }

  /** Defaults for making invitations. */
  interface Invite extends MemberLimits.Rule {
    @Override
    @WithDefault("30")
    int free();

    @Override
    @WithDefault("30S")
    Duration first();

    @Override
    @WithDefault("1H")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }
}
