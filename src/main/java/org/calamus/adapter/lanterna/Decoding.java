package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.input.BasicCharacterPattern;
import com.googlecode.lanterna.input.CharacterPattern;
import com.googlecode.lanterna.input.InputDecoder;
import com.googlecode.lanterna.input.KeyDecodingProfile;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.ArrayList;
import java.util.List;

/**
 * Teaches Lanterna's decoder the sequences of a numeric keypad that it does not know, and to
 * swallow whole every control sequence that nobody knows. Left to itself it gives the tail of such
 * a sequence as plain characters, and its digits would be typed into a field.
 */
final class Decoding {

  private static final char ESC = KeyDecodingProfile.ESC_CODE;

  /** Application keypad, ESC O and a letter: VT220 programmer reference, keypad codes. */
  private static final String APPLICATION = "pqrstuvwxyjkmno";

  private static final String APPLICATION_KEYS = "0123456789*+-./";

  /**
   * Quarter seconds to wait for the rest of a sequence that a slow line has split. Felt only after
   * the escape key, which does nothing here.
   */
  private static final int PATIENCE = 1;

  private Decoding() {}

  /** Changes a decoder that has the default profile. */
  static void teach(InputDecoder decoder) {
    List<CharacterPattern> known = new ArrayList<>(decoder.getPatterns());
    known.forEach(decoder::removePattern);
    // of several patterns that match, the last one wins: what nobody knows goes first
    decoder.addProfile(() -> List.of(new UnknownSequence()));
    decoder.addProfile(() -> known);
    decoder.addProfile(Decoding::keypad);
    // without this a carriage return alone would wait for what never comes
    decoder.removePattern(new BasicCharacterPattern(new KeyStroke(KeyType.Enter), '\r', '\u0000'));
    decoder.setTimeoutUnits(PATIENCE);
  }

  private static List<CharacterPattern> keypad() {
    List<CharacterPattern> patterns = new ArrayList<>();
    for (int i = 0; i < APPLICATION.length(); i++) {
      KeyStroke stroke = new KeyStroke(APPLICATION_KEYS.charAt(i), false, false);
      patterns.add(new BasicCharacterPattern(stroke, ESC, 'O', APPLICATION.charAt(i)));
    }
    KeyStroke enter = new KeyStroke(KeyType.Enter);
    KeyStroke five = new KeyStroke('5', false, false);
    patterns.add(new BasicCharacterPattern(enter, '\r'));
    patterns.add(new BasicCharacterPattern(enter, ESC, 'O', 'M'));
    patterns.add(new BasicCharacterPattern(new KeyStroke(',', false, false), ESC, 'O', 'l'));
    patterns.add(new BasicCharacterPattern(five, ESC, '[', 'E'));
    patterns.add(new BasicCharacterPattern(five, ESC, 'O', 'E'));
    patterns.add(new BasicCharacterPattern(five, ESC, '[', 'G'));
    // as rxvt sends them
    patterns.add(new BasicCharacterPattern(new KeyStroke(KeyType.Home), ESC, '[', '7', '~'));
    patterns.add(new BasicCharacterPattern(new KeyStroke(KeyType.End), ESC, '[', '8', '~'));
    // cursor keys in application mode; Lanterna takes them for Ctrl and an arrow
    patterns.add(new BasicCharacterPattern(new KeyStroke(KeyType.ArrowUp), ESC, 'O', 'A'));
    patterns.add(new BasicCharacterPattern(new KeyStroke(KeyType.ArrowDown), ESC, 'O', 'B'));
    patterns.add(new BasicCharacterPattern(new KeyStroke(KeyType.ArrowRight), ESC, 'O', 'C'));
    patterns.add(new BasicCharacterPattern(new KeyStroke(KeyType.ArrowLeft), ESC, 'O', 'D'));
    patterns.add(new BasicCharacterPattern(PasteEdge.BEGIN, ESC, '[', '2', '0', '0', '~'));
    patterns.add(new BasicCharacterPattern(PasteEdge.END, ESC, '[', '2', '0', '1', '~'));
    return patterns;
  }

  /** The beginning or end of pasted text, where the terminal marks it. */
  static final class PasteEdge extends KeyStroke {
    static final PasteEdge BEGIN = new PasteEdge();
    static final PasteEdge END = new PasteEdge();

    private PasteEdge() {
      super(KeyType.Unknown);
    }

    // KeyStroke compares by key and modifiers, in which the two edges are alike
    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }
}
