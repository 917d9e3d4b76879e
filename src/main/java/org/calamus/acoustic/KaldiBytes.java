package org.calamus.acoustic;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Writes values as Kaldi's binary files have them: each scalar behind a byte with its size. */
final class KaldiBytes {

  private final ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 23);

  /** Marks the file as binary. */
  KaldiBytes binaryMark() {
    out.write(0);
    out.write('B');
    return this;
  }

  /** Writes a token; a blank ends it. */
  KaldiBytes token(String token) {
    return text(token + " ");
  }

  KaldiBytes text(String text) {
    out.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
    return this;
  }

  KaldiBytes number(int value) {
    out.write(Integer.BYTES);
    out.writeBytes(buffer(Integer.BYTES).putInt(value).array());
    return this;
  }

  KaldiBytes number(float value) {
    out.write(Float.BYTES);
    out.writeBytes(buffer(Float.BYTES).putFloat(value).array());
    return this;
  }

  KaldiBytes truth(boolean value) {
    return token(value ? "T" : "F");
  }

  /** Writes a list of whole numbers. */
  KaldiBytes numbers(int[] values) {
    number(values.length);
    ByteBuffer buffer = buffer(values.length * Integer.BYTES);
    buffer.asIntBuffer().put(values);
    out.writeBytes(buffer.array());
    return this;
  }

  KaldiBytes vector(float[] values) {
    return token("FV").number(values.length).raw(values);
  }

  /** Writes a matrix given row by row. */
  KaldiBytes matrix(int columns, float[] values) {
    return token("FM").number(values.length / columns).number(columns).raw(values);
  }

  private KaldiBytes raw(float[] values) {
    ByteBuffer buffer = buffer(values.length * Float.BYTES);
    buffer.asFloatBuffer().put(values);
    out.writeBytes(buffer.array());
    return this;
  }

  private static ByteBuffer buffer(int size) {
    return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
  }

  byte[] toBytes() {
    return out.toByteArray();
  }
}
