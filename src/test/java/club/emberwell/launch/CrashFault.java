package club.emberwell.launch;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** What happens to a club while its members post. Each fault ends with all of it running again. */
enum CrashFault {
  PROGRAM_KILLED(30) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      club.killProgram();
      club.startProgram();
    }
  },
  DATABASE_KILLED(30) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      club.killDatabase();
      club.awaitDatabase();
    }
  },
  BOTH_KILLED(15) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      club.killDatabase();
      club.killProgram();
      club.awaitDatabase();
      club.startProgram();
    }
  },
  CLIENTS_CUT_OFF(10) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      interrupt(club.toProgram, Relay.State.CUT, chance);
    }
  },
  CLIENTS_HEAR_NOTHING(10) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      interrupt(club.toProgram, Relay.State.SILENT, chance);
    }
  },
  DATABASE_CUT_OFF(10) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      interrupt(club.toDatabase, Relay.State.CUT, chance);
    }
  },
  DATABASE_HEARS_NOTHING(10) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      interrupt(club.toDatabase, Relay.State.SILENT, chance);
    }
  },
  DISK_FULL(10) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      Path filler = club.disk.resolve("filler");
      try (OutputStream out = Files.newOutputStream(filler)) {
        byte[] much = new byte[1 << 20];
        while (true) {
          out.write(much);
        }
      } catch (IOException e) {
        Thread.sleep(1_000 + chance.nextInt(3_000));
      } finally {
        Files.delete(filler);
      }
      club.awaitDatabase();
    }
  },
  CLOCK_MOVED(4) {
    @Override
    void strike(CrashClub club, Random chance) throws Exception {
      club.moveClock(moved(chance));
      club.killProgram();
      club.startProgram(true);
      Thread.sleep(1_000 + chance.nextInt(2_000));
      club.moveClock(moved(chance));
      Thread.sleep(1_000 + chance.nextInt(2_000));
      club.moveClock("+0");
      Thread.sleep(1_000 + chance.nextInt(2_000));
      club.killProgram();
      club.startProgram();
    }

    private String moved(Random chance) {
      return (chance.nextBoolean() ? "+" : "-") + (1 + chance.nextInt(36)) + "h";
    }
  };

  /** How often it is drawn beside the others. */
  private final int share;

  CrashFault(int share) {
    this.share = share;
  }

  abstract void strike(CrashClub club, Random chance) throws Exception;

  private static void interrupt(Relay relay, Relay.State state, Random chance)
      throws InterruptedException {
    relay.set(state);
    Thread.sleep(300 + chance.nextInt(6_000));
    // who waited long finds the line broken
    relay.set(Relay.State.CUT);
    relay.set(Relay.State.OPEN);
  }

  static CrashFault any(Random chance) {
    int sum = 0;
    for (CrashFault each : values()) {
      sum += each.share;
    }
    int drawn = chance.nextInt(sum);
    for (CrashFault each : values()) {
      drawn -= each.share;
      if (drawn < 0) {
        return each;
      }
    }
    throw new AssertionError();
  }
}
