package org.calamus.adapter.files;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.calamus.port.AudioSource;

/**
 * WAV files of 16 kHz, one channel, 16 bit.
 *
 * <p>Source of the layout: Microsoft and IBM, Multimedia Programming Interface and Data
 * Specifications 1.0 (1991), "Waveform Audio File Format": a RIFF chunk with a format chunk of 16
 * bytes and a data chunk, all numbers little-endian.
 */
final class WavHeader {

  /** Its length. */
  static final int BYTES = 44;

  /** The length of a sample. */
  static final short BYTES_A_SAMPLE = 2;

  private static final int FORMAT_BYTES = 16;
  private static final short PCM = 1;
  private static final short CHANNELS = 1;

  private WavHeader() {}

  /** The header of a file with so many bytes of sound, ready to be written. */
  static ByteBuffer of(long soundBytes) {
    return ByteBuffer.allocate(BYTES)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("RIFF"))
        .putInt((int) (BYTES - 8 + soundBytes))
        .put(ascii("WAVEfmt "))
        .putInt(FORMAT_BYTES)
        .putShort(PCM)
        .putShort(CHANNELS)
        .putInt(AudioSource.RATE)
        .putInt(AudioSource.RATE * BYTES_A_SAMPLE)
        .putShort(BYTES_A_SAMPLE)
        .putShort((short) (8 * BYTES_A_SAMPLE))
        .put(ascii("data"))
        .putInt((int) soundBytes)
        .flip();
  }

  /** Samples as they stand behind the header, ready to be written. */
  static ByteBuffer sound(short[] samples) {
    ByteBuffer bytes =
        ByteBuffer.allocate(samples.length * BYTES_A_SAMPLE).order(ByteOrder.LITTLE_ENDIAN);
    for (short sample : samples) {
      bytes.putShort(sample);
    }
    return bytes.flip();
  }

  private static byte[] ascii(String name) {
    return name.getBytes(StandardCharsets.US_ASCII);
  }
}
