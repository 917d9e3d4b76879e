package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * All speakers of the measurement and the half that each belongs to. The one person whose
 * recordings took part in the tuning reads in both halves, other utterances in each.
 */
final class Speakers {

  private Speakers() {}

  /** Every speaker, whether it can be heard on this machine or not. */
  static List<Speaker> all() throws IOException {
    List<Speaker> all = new ArrayList<>();
    all.add(Speaker.flite("slt", Half.TUNING));
    all.add(Speaker.flite("awb", Half.TUNING));
    all.add(Speaker.festival("cmu_us_slt_arctic_hts", Half.TUNING));
    all.add(Speaker.espeak("en-us", Half.TUNING));
    all.add(Speaker.espeak("en-us+f3", Half.TUNING));
    all.add(Speaker.flite("rms", Half.REPORTING));
    all.add(Speaker.flite("kal16", Half.REPORTING));
    all.add(Speaker.festival("kal_diphone", Half.REPORTING));
    all.add(Speaker.espeak("en-gb", Half.REPORTING));
    all.add(Speaker.espeak("en-gb-scotland+m3", Half.REPORTING));
    for (Path folder : RecordedPrompts.folders()) {
      for (Half half : Half.values()) {
        all.add(new Speaker("person", half, "person", new RecordedPrompts(folder)));
      }
    }
    if (RecordedPrompts.folders().isEmpty()) {
      all.add(new Speaker("person", Half.REPORTING, "person", new Nobody()));
    }
    all.add(new Speaker("other people", Half.REPORTING, "other people", new OtherPeople()));
    for (Half half : Half.values()) {
      all.addAll(OtherLanguages.speakers(half));
      all.add(new Speaker("sounds", half, "sounds", new Sounds()));
    }
    return all;
  }

  /** In the place of recordings that are not on this machine. */
  private static final class Nobody implements Speaker.Mouth {
    @Override
    public boolean isThere() {
      return false;
    }

    @Override
    public boolean canSay(Said said) {
      return false;
    }

    @Override
    public void say(Said said, Path wav) throws IOException {
      throw new IOException("nobody is there to say " + said.words());
    }
  }

  /** Those that can be heard on this machine. */
  static List<Speaker> there() throws IOException {
    return all().stream().filter(Speaker::isThere).toList();
  }

  /** Whether a program is on the PATH. */
  static boolean hasProgram(String name) {
    for (String folder :
        System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator)) {
      if (Files.isExecutable(Path.of(folder, name))) {
        return true;
      }
    }
    return false;
  }
}
