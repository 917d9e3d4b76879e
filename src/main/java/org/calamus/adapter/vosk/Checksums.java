package org.calamus.adapter.vosk;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 sums as lower-case hexadecimal text. */
final class Checksums {

  private Checksums() {}

  static String of(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError("every Java platform has SHA-256", e);
    }
  }

  static String of(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8));
  }
}
