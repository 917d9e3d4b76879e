package org.calamus.adapter.serial;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PortFaultTest {

  /** Source: errno.h of Linux and macOS, winerror.h of Windows. */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          2,   Linux,      MISSING
          6,   Linux,      MISSING
          13,  Linux,      FORBIDDEN
          11,  Linux,      IN_USE
          16,  Linux,      IN_USE
          25,  Linux,      OTHER
          13,  Mac OS X,   FORBIDDEN
          35,  Mac OS X,   IN_USE
          2,   Windows 10, MISSING
          5,   Windows 11, IN_USE
          13,  Windows 11, OTHER
          """)
  void ofTellsTheFaultByTheCodeOfTheSystem(int code, String system, PortFault fault) {
    assertThat(PortFault.of(code, system)).isEqualTo(fault);
  }

  @Test
  void sentenceSaysWhatToDoAboutAPermission() {
    assertThat(PortFault.FORBIDDEN.sentence("/dev/ttyUSB0"))
        .isEqualTo(
            "The port /dev/ttyUSB0 may not be used by this user; join the group that owns it"
                + " (often dialout or uucp) and log in again.");
  }
}
