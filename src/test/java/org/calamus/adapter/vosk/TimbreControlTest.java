package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.calamus.acoustic.Cepstra;
import org.calamus.core.hearing.Timbre;
import org.junit.jupiter.api.Test;

/** How the timbre of a voice is learnt, and brought to another one. */
class TimbreControlTest {

  private static final String SPEECH = "rms-seven-three-point-five";

  /** As the ears would give it to the recogniser: at its level, and with no digital silence. */
  private static short[] speech() {
    short[] both = Sounds.join(Sounds.recording(SPEECH), Sounds.recording("rms-nine-two"));
    LevelControl level = new LevelControl();
    level.learn(both);
    level.begin();
    return new Hiss().over(level.apply(both));
  }

  /** Through a microphone that gives high sounds less: the mean of each two samples. */
  private static short[] muffled(short[] sound) {
    short[] out = sound.clone();
    for (int i = 1; i < sound.length; i++) {
      out[i] = (short) ((sound[i] + sound[i - 1]) / 2);
    }
    return new Hiss().over(out);
  }

  private static double[] means(short[] sound) {
    List<double[]> loud = new MelCepstra().of(sound).stream().filter(f -> f[0] > 76).toList();
    double[] means = new double[MelCepstra.COEFFICIENTS];
    for (double[] frame : loud) {
      Arrays.setAll(means, i -> means[i] + frame[i] / loud.size());
    }
    return means;
  }

  private static short[] tuned(TimbreControl control, short[] sound) {
    Suppression suppression = new Suppression();
    suppression.tune(control);
    return new Hiss().over(suppression.clean(sound));
  }

  private static double distance(double[] one, double[] other) {
    double sum = 0;
    for (int i = 1; i < one.length; i++) {
      sum += Math.pow(one[i] - other[i], 2);
    }
    return Math.sqrt(sum);
  }

  /**
   * Against the same features written down anew with the plain Fourier sum, which another test
   * compares with the recogniser's own scores.
   */
  @Test
  void featuresAreThoseOfTheRecogniser() {
    short[] sound = speech();
    double[] samples = new double[sound.length];
    Arrays.setAll(samples, i -> sound[i]);

    List<double[]> ours = new MelCepstra().of(sound);
    double[][] expected = Cepstra.frames(samples);

    assertThat(ours).hasSize(expected.length);
    for (int t = 0; t < expected.length; t++) {
      assertThat(ours.get(t)).containsExactly(expected[t], within(1e-6));
    }
  }

  @Test
  void soundIsBroughtToTheTimbreExpected() {
    double[] expected = means(speech());
    short[] heard = muffled(speech());
    TimbreControl control = new TimbreControl(expected);
    control.learn(Sounds.join(Collections.nCopies(40, heard).toArray(short[][]::new)));

    double before = distance(means(heard), expected);
    double after = distance(means(tuned(control, heard)), expected);

    assertThat(before).isGreaterThan(5);
    assertThat(after).isLessThan(before / 3);
  }

  @Test
  void whatItLearnsFromItsOwnResultDoesNotRunAway() {
    double[] expected = means(speech());
    short[] heard = muffled(speech());
    TimbreControl control = new TimbreControl(expected);
    for (int i = 0; i < 40; i++) {
      control.learn(tuned(control, heard));
    }

    assertThat(distance(means(tuned(control, heard)), expected))
        .isLessThan(distance(means(heard), expected) / 3);
  }

  @Test
  void aVoiceOfTheTimbreExpectedIsLeftAsItIs() {
    TimbreControl control = new TimbreControl(means(speech()));
    control.learn(speech());

    for (double factor : control.factors(257)) {
      assertThat(factor).isCloseTo(1, within(1e-9));
    }
  }

  @Test
  void pausesTeachNothing() {
    TimbreControl control = new TimbreControl(means(speech()));
    control.learn(Sounds.room(3_000));

    assertThat(control.timbre().frames()).isZero();
  }

  @Test
  void noFrequencyIsChangedByMoreThanTwelveDecibels() {
    TimbreControl control = new TimbreControl(new double[MelCepstra.COEFFICIENTS]);
    control.recall(new Timbre(Collections.nCopies(Timbre.COEFFICIENTS, 900.0), 1_000));

    for (double factor : control.factors(257)) {
      assertThat(20 * Math.log10(factor)).isBetween(-12.001, 12.001);
    }
  }

  /**
   * A microphone that gives almost only high sounds: what the bound keeps from being made good is
   * not learnt as if it had been.
   */
  @Test
  void whatIsLearntSettlesWhereTheChangeIsBounded() {
    TimbreControl control = new TimbreControl(means(speech()));
    short[] heard = shrill(speech());
    double[] early = afterHearing(control, heard, 50);
    double[] late = afterHearing(control, heard, 350);

    assertThat(Arrays.stream(control.factors(257)).max())
        .hasValueCloseTo(Decibels.factor(12), within(1e-9));
    for (int i = 0; i < early.length; i++) {
      assertThat(late[i]).isCloseTo(early[i], within(0.2));
    }
  }

  private static double[] afterHearing(TimbreControl control, short[] heard, int times) {
    for (int i = 0; i < times; i++) {
      control.learn(tuned(control, heard));
    }
    return control.timbre().means().stream().mapToDouble(m -> m).toArray();
  }

  /** Nineteen twentieths of the sample before are taken off each. */
  private static short[] shrill(short[] sound) {
    short[] out = sound.clone();
    for (int i = 1; i < sound.length; i++) {
      out[i] = (short) Math.round(sound[i] - 0.95 * sound[i - 1]);
    }
    LevelControl level = new LevelControl();
    level.learn(out);
    level.begin();
    return new Hiss().over(level.apply(out));
  }

  @Test
  void whatIsRecalledIsGoneOnFrom() {
    TimbreControl first = new TimbreControl(means(speech()));
    first.learn(muffled(speech()));
    TimbreControl second = new TimbreControl(means(speech()));
    second.recall(first.timbre());

    assertThat(second.factors(257)).containsExactly(first.factors(257), within(1e-9));
  }
}
