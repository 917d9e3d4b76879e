package org.calamus.adapter.serial;

/** Why a port could not be opened, in a sentence with what to do next. */
enum PortFault {
  /** There is no such port. */
  MISSING(
      "The port %s is not there; plug the instrument in, or choose a port that \"check\" lists."),
  /** The user may not use it. */
  FORBIDDEN(
      "The port %s may not be used by this user; join the group that owns it (often dialout or"
          + " uucp) and log in again."),
  /** Another program has it. */
  IN_USE("The port %s is in use by another program; close that program."),
  /** Anything else. */
  OTHER("The port %s cannot be opened; unplug the instrument and plug it in again."),
  /** The library does not work on this machine. */
  NO_LIBRARY("The port %s cannot be opened, since serial ports do not work on this machine.");

  private final String sentence;

  PortFault(String sentence) {
    this.sentence = sentence;
  }

  /** The sentence about a port. */
  String sentence(String path) {
    return sentence.replace("%s", path);
  }

  /**
   * Tells the fault by the error code of a failed opening.
   *
   * <p>On Linux and macOS the code is that of the system (errno.h): 2 and 6 no such device, 13 not
   * permitted, 16 busy; 11 (Linux) and 35 (macOS) the lock of another program. On Windows it is
   * that of CreateFile (winerror.h): 2 and 3 not found, 5 access denied, which Windows says of a
   * port in use.
   *
   * @param code the code the library gives
   * @param system the name of the operating system, as Java gives it
   */
  static PortFault of(int code, String system) {
    if (system.startsWith("Windows")) {
      return switch (code) {
        case 2, 3 -> MISSING;
        case 5 -> IN_USE;
        default -> OTHER;
      };
    }
    return switch (code) {
      case 2, 6 -> MISSING;
      case 13 -> FORBIDDEN;
      case 11, 16, 35 -> IN_USE;
      default -> OTHER;
    };
  }
}
