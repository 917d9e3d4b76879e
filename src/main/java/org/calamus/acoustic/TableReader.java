package org.calamus.acoustic;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.charset.StandardCharsets;

/** Reads little-endian values from one table and says which table it is when they run out. */
final class TableReader {

  private static final int S3_ORDER_MARK = 0x11223344;
  private static final int LONGEST_HEADER = 4096;
  private static final int CHECKSUM_ROTATION = 20;

  private final String table;
  private final ByteBuffer bytes;

  TableReader(String table, byte[] bytes) {
    this.table = table;
    this.bytes = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** Opens a table of the "s3" family and skips its text header. */
  static TableReader ofS3(String table, byte[] bytes) {
    TableReader reader = new TableReader(table, bytes);
    String head =
        new String(bytes, 0, Math.min(bytes.length, LONGEST_HEADER), StandardCharsets.ISO_8859_1);
    int end = head.indexOf("endhdr\n");
    reader.require(head.startsWith("s3\n") && end >= 0, "does not begin with an s3 header");
    reader.skip(end + "endhdr\n".length());
    reader.require(
        reader.int32() == S3_ORDER_MARK, "lacks the byte order mark of a little-endian file");
    return reader;
  }

  /** Makes the exception for a damaged table. */
  AcousticException damaged(String what) {
    return new AcousticException(
        "The acoustic table \"" + table + "\" " + what + ": it is damaged or of another kind.");
  }

  void require(boolean holds, String otherwise) {
    if (!holds) {
      throw damaged(otherwise);
    }
  }

  int position() {
    return bytes.position();
  }

  void skip(int count) {
    need(count);
    bytes.position(bytes.position() + count);
  }

  int int32() {
    need(Integer.BYTES);
    return bytes.getInt();
  }

  int unsignedByte() {
    need(1);
    return bytes.get() & 0xff;
  }

  int unsignedShort() {
    need(Short.BYTES);
    return bytes.getShort() & 0xffff;
  }

  /** Reads a count and checks that it lies in a sensible range. */
  int count(String what, int least, int most) {
    int value = int32();
    require(value >= least && value <= most, "gives " + value + " " + what);
    return value;
  }

  byte[] bytes(int count) {
    need(count);
    byte[] read = new byte[count];
    bytes.get(read);
    return read;
  }

  /** Reads text that ends with a zero byte. */
  String zeroTerminated() {
    StringBuilder text = new StringBuilder();
    for (int c = unsignedByte(); c != 0; c = unsignedByte()) {
      text.append((char) c);
    }
    return text.toString();
  }

  /** Reads finite numbers. */
  float[] floats(int count) {
    need((long) count * Float.BYTES);
    FloatBuffer view = bytes.asFloatBuffer();
    float[] read = new float[count];
    view.get(read);
    bytes.position(bytes.position() + count * Float.BYTES);
    for (float value : read) {
      require(Float.isFinite(value), "holds something that is not a number");
    }
    return read;
  }

  /** Ends a table of the "s3" family: all of it was read, and its checksum is right. */
  void endS3(int start) {
    int end = bytes.position();
    int expected = int32();
    require(!bytes.hasRemaining(), "goes on after its end");
    int sum = 0;
    for (int at = start; at < end; at += Integer.BYTES) {
      sum = Integer.rotateLeft(sum, CHECKSUM_ROTATION) + bytes.getInt(at);
    }
    require(sum == expected, "does not have the checksum it gives");
  }

  private void need(long count) {
    if (count < 0 || bytes.remaining() < count) {
      throw damaged(
          "ends at byte "
              + bytes.limit()
              + " where "
              + count
              + " more bytes were expected at byte "
              + bytes.position());
    }
  }
}
