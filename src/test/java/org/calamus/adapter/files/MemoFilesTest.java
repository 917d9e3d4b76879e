package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.port.Memos;
import org.calamus.port.Memos.MemoException;
import org.calamus.support.Outside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class MemoFilesTest {

  private static final short[] SOUND = {0, 1, -1, 300, -300, Short.MAX_VALUE, Short.MIN_VALUE};

  @TempDir Path data;

  private Path memos() {
    return data.resolve("memos");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> all = Files.list(memos())) {
      return all.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private static short[] samples(Path wav) throws Exception {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
      byte[] bytes = in.readAllBytes();
      short[] samples = new short[bytes.length / 2];
      ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(samples);
      return samples;
    }
  }

  private static String record(Memos memos, String name, short[]... blocks) {
    try (Memos.Recording recording = memos.named(name).begin()) {
      for (short[] block : blocks) {
        recording.add(block);
      }
      return recording.keep();
    }
  }

  @Test
  void keptMemoHoldsEverySample() throws Exception {
    assertThat(record(new MemoFiles(data), "12-1.wav", SOUND, SOUND)).isEqualTo("12-1.wav");
    assertThat(names()).containsExactly("12-1.wav");
    short[] twice = Arrays.copyOf(SOUND, 2 * SOUND.length);
    System.arraycopy(SOUND, 0, twice, SOUND.length, SOUND.length);
    assertThat(samples(memos().resolve("12-1.wav"))).isEqualTo(twice);
  }

  @Test
  void keptMemoIsPcmOfOneChannelAndSixteenKilohertz() throws Exception {
    record(new MemoFiles(data), "12-1.wav", SOUND);
    byte[] file = Files.readAllBytes(memos().resolve("12-1.wav"));
    ByteBuffer header = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(header.getInt(4)).as("RIFF size").isEqualTo(file.length - 8);
    assertThat(header.getShort(20)).as("PCM").isEqualTo((short) 1);
    assertThat(header.getShort(22)).as("channels").isEqualTo((short) 1);
    assertThat(header.getInt(24)).as("rate").isEqualTo(16_000);
    assertThat(header.getInt(28)).as("bytes a second").isEqualTo(32_000);
    assertThat(header.getShort(32)).as("bytes a frame").isEqualTo((short) 2);
    assertThat(header.getShort(34)).as("bits").isEqualTo((short) 16);
    assertThat(header.getInt(40)).as("sound").isEqualTo(2 * SOUND.length);
  }

  @Test
  void memoHasItsNameOnlyWhenKeptAndCanBePlayedBefore() throws Exception {
    try (Memos.Recording recording = new MemoFiles(data).named("12-1.wav").begin()) {
      recording.add(SOUND);
      assertThat(names()).containsExactly("12-1.wav.part");
      assertThat(samples(memos().resolve("12-1.wav.part"))).isEqualTo(SOUND);
    }
    assertThat(names()).as("not kept").isEmpty();
  }

  @Test
  void namedWritesNothing() {
    new MemoFiles(data).named("12-1.wav");
    assertThat(data).isEmptyDirectory();
  }

  @Test
  void keepTakesNoNameThatAMemoHas() throws Exception {
    Memos memos = new MemoFiles(data);
    record(memos, "12-1.wav", new short[] {1});
    assertThat(record(memos, "12-1.wav", new short[] {2})).isEqualTo("12-1-2.wav");
    assertThat(record(memos, "12-1.wav", new short[] {3})).isEqualTo("12-1-3.wav");
    assertThat(samples(memos().resolve("12-1.wav"))).containsExactly((short) 1);
    assertThat(samples(memos().resolve("12-1-2.wav"))).containsExactly((short) 2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "12-1", "../12-1.wav", "a/b.wav", "12-1.wav.part", "12 1.wav", ".wav"})
  void namedRefusesWhatIsNoPlainName(String name) {
    Memos memos = new MemoFiles(data);
    assertThatIllegalArgumentException().isThrownBy(() -> memos.named(name));
  }

  @Test
  void nextStartKeepsWhatAKilledSessionLeftUnderANameOfItsOwn() throws Exception {
    leave("12-1.wav.part", header(999), new byte[] {1, 0, 2, 0, 3});
    leave("13-1.wav.part", new byte[0], new byte[0]);
    leave("14-1.wav.part", header(0), new byte[0]);
    record(new MemoFiles(data), "15-1.wav", SOUND);
    assertThat(names()).containsExactly("12-1.cut.wav", "15-1.wav");
    assertThat(samples(memos().resolve("12-1.cut.wav"))).containsExactly((short) 1, (short) 2);
    leave("12-1.wav.part", header(2), new byte[] {9, 0});
    new MemoFiles(data);
    assertThat(names()).containsExactly("12-1.cut-2.wav", "12-1.cut.wav", "15-1.wav");
  }

  private void leave(String name, byte[] header, byte[] sound) throws IOException {
    Files.createDirectories(memos());
    try (OutputStream out = Files.newOutputStream(memos().resolve(name))) {
      out.write(header);
      out.write(sound);
    }
  }

  /** A header as a power cut may leave it: its length is not that of the file. */
  private static byte[] header(int length) {
    return ByteBuffer.allocate(44).order(ByteOrder.LITTLE_ENDIAN).putInt(40, length).array();
  }

  @Test
  void folderThatIsAFileIsToldInASentence() throws IOException {
    Files.writeString(memos(), "not a folder");
    Memos.Place place = new MemoFiles(data).named("12-1.wav");
    assertThatThrownBy(place::begin)
        .isInstanceOf(MemoException.class)
        .hasMessage(
            "The note is not recorded: "
                + memos()
                + " cannot be written to; look after the folder, or type the note.");
    assertThat(memos()).hasContent("not a folder");
  }

  @Test
  void fullDiskIsToldInASentenceAndLeavesNothingBehind() throws Exception {
    String mount = Outside.program("mount").toString();
    Path disk = Files.createDirectory(data.resolve("disk"));
    if (run(mount, "-t", "tmpfs", "-o", "size=256k", "tmpfs", disk.toString()) != 0) {
      throw Outside.missing("the right to mount a small disk");
    }
    try {
      Memos.Recording recording = new MemoFiles(disk).named("12-1.wav").begin();
      short[] second = new short[16_000];
      assertThatThrownBy(
              () -> {
                for (int i = 0; i < 60; i++) {
                  recording.add(second);
                }
              })
          .isInstanceOf(MemoException.class)
          .hasMessage(
              "The note is not recorded: the disk that holds "
                  + disk.resolve("memos")
                  + " is full; free some space, or type the note.");
      recording.close();
      assertThat(disk.resolve("memos")).isEmptyDirectory();
      assertThat(record(new MemoFiles(disk), "12-1.wav", SOUND)).isEqualTo("12-1.wav");
    } finally {
      assertThat(run("umount", "-l", disk.toString())).isZero();
    }
  }

  private static int run(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }
}
