package club.emberwell.launch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * The account the database programs run under, as a command prefix: PostgreSQL refuses to run as
 * root, so root takes a user namespace of its own, or where that is forbidden the account nobody.
 */
record Account(List<String> prefix, boolean ownsOtherFiles) {
  private static final int NOBODY_ID = 65_534;
  private static final List<String> NAMESPACE = List.of("unshare", "-U");
  private static final List<String> NOBODY =
      List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups");

  Account {
    prefix = List.copyOf(prefix);
  }

  /** The account for this process. */
  static Account current() {
    if (!isRoot()) {
      return new Account(List.of(), false);
    }
    return works(NAMESPACE) ? new Account(NAMESPACE, false) : nobody();
  }

  /** The fallback of root where user namespaces are switched off. */
  static Account nobody() {
    if (!works(NOBODY)) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "The built-in database cannot run as root on this machine; start Emberwell under an"
              + " account of its own.");
    }
    return new Account(NOBODY, true);
  }

  static boolean isRoot() {
    try {
      return Integer.valueOf(0).equals(Files.getAttribute(Path.of("/proc/self"), "unix:uid"));
    } catch (IOException e) {
      return "root".equals(System.getProperty("user.name"));
    }
  }

  /** Whether root runs a database on this: its own, or one handed to the account nobody. */
  static boolean isRoots(Path data) throws IOException {
    return Set.of(0, NOBODY_ID).contains((Integer) Files.getAttribute(data, "unix:uid"));
  }

  /** A command line that runs under this account. */
  List<String> command(List<String> words) {
    List<String> line = new ArrayList<>(prefix);
    line.addAll(words);
    return line;
  }

  /** Hands a folder and all in it to the account, where files must change their owner for it. */
  void own(Path folder) throws IOException {
    if (!ownsOtherFiles) {
      return;
    }
    requireReachable(folder);
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : (Iterable<Path>) paths::iterator) {
        Files.setAttribute(path, "unix:uid", NOBODY_ID, java.nio.file.LinkOption.NOFOLLOW_LINKS);
        Files.setAttribute(path, "unix:gid", NOBODY_ID, java.nio.file.LinkOption.NOFOLLOW_LINKS);
      }
    }
  }

  private void requireReachable(Path folder) {
    if (!works(command(List.of("test", "-d", folder.toString())))) {
      throw new LaunchException(
          ExitCode.NO_DATABASE,
          "The account nobody, which runs the built-in database for root here, cannot reach "
              + folder
              + "; choose another folder with --home or start under an account of its own.");
    }
  }

  private static boolean works(List<String> prefix) {
    List<String> line = new ArrayList<>(prefix);
    if (!prefix.contains("test")) {
      line.add("true");
    }
    try {
      Process process =
          new ProcessBuilder(line)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }
}
