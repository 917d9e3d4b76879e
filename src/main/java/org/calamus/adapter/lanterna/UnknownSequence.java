package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.input.CharacterPattern;
import com.googlecode.lanterna.input.KeyDecodingProfile;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.List;

/**
 * Matches any control sequence by its form: ESC [ or ESC O, parameters {@code 0-9:;<=>?},
 * intermediates (blank to {@code /}), one final character from {@code @} to {@code ~} (ECMA-48,
 * 5.4). The key is unknown; patterns that know better come after it.
 */
final class UnknownSequence implements CharacterPattern {

  private static final int LONGEST = 64;

  @Override
  public Matching match(List<Character> sequence) {
    int size = sequence.size();
    if (sequence.get(0) != KeyDecodingProfile.ESC_CODE || size > LONGEST) {
      return null;
    }
    int start = size > 1 && sequence.get(1) == KeyDecodingProfile.ESC_CODE ? 2 : 1;
    if (size <= start) {
      return Matching.NOT_YET;
    }
    if (sequence.get(start) != '[' && sequence.get(start) != 'O') {
      return null;
    }
    boolean isPastParameters = false;
    for (int i = start + 1; i < size; i++) {
      char c = sequence.get(i);
      if (c >= '@' && c <= '~') {
        return i == size - 1 ? new Matching(new KeyStroke(KeyType.Unknown)) : null;
      }
      boolean isParameter = c >= '0' && c <= '?';
      boolean isIntermediate = c >= ' ' && c <= '/';
      if (isParameter && isPastParameters || !isParameter && !isIntermediate) {
        return null;
      }
      isPastParameters = isIntermediate;
    }
    return Matching.NOT_YET;
  }
}
