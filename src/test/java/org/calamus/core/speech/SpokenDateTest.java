package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Days said and struck on 20 June 2026; ways to say a day: common practice, no published source.
 */
class SpokenDateTest {

  private static final FieldSpec DATE = WholeRecord.form(CodeSet.LABORATORY).spec(FieldId.DATE);

  @ParameterizedTest
  @CsvSource({
    "one six june, 2026-06-16",
    "sixteen june, 2026-06-16",
    "sixteenth of june, 2026-06-16",
    "june sixteen, 2026-06-16",
    "june sixteenth, 2026-06-16",
    "june one six, 2026-06-16",
    "zero six june, 2026-06-06",
    "oh six june, 2026-06-06",
    "six june, 2026-06-06",
    "niner may, 2026-05-09",
    "twenty first of may, 2026-05-21",
    "twenty one may, 2026-05-21",
    "three one may, 2026-05-31",
    "thirty first may, 2026-05-31",
    "may twenty third, 2026-05-23",
    "twentieth june, 2026-06-20",
    "first of january, 2026-01-01",
    "november five, 2025-11-05",
    "five november, 2025-11-05",
    "one six june two zero two five, 2025-06-16",
    "sixteenth of june twenty twenty five, 2025-06-16",
    "june sixteen twenty twenty five, 2025-06-16",
    "june six two zero two five, 2025-06-06",
    "may twenty third twenty nineteen, 2019-05-23",
    "two zero two six june one six, 2026-06-16",
    "june twenty two zero two five, 2025-06-20",
    "june twenty two two zero two five, 2025-06-22",
    "june twentieth two zero two five, 2025-06-20",
    "december three two zero two five, 2025-12-03",
    "june two zero two zero two five, 2025-06-20",
    "june one two zero two five, 2025-06-01",
    "twenty june twenty oh six, 2006-06-20",
    "two nine february, 2024-02-29",
    "two nine february two zero two four, 2024-02-29"
  })
  void understandsTheWaysToSayADay(String words, String date) {
    assertThat(Listener.hear(FieldId.DATE, words)).isEqualTo(date);
    assertThat(Listener.hear(FieldId.WING, "capture date " + words)).isEqualTo("DATE " + date);
  }

  @ParameterizedTest
  @CsvSource({
    // the last such day up to today, 20 June 2026
    "two zero june, 2026-06-20",
    "two one june, 2025-06-21",
    "three one december, 2025-12-31"
  })
  void aDayWithoutItsYearIsTheLastOne(String words, String date) {
    assertThat(Listener.hear(FieldId.DATE, words)).isEqualTo(date);
  }

  @ParameterizedTest
  @CsvSource({
    "thirteen may, 2026-05-13|2026-05-30",
    "thirtieth of may, 2026-05-30|2026-05-13",
    "may thirty, 2026-05-30|2026-05-13",
    "thirteenth of february, 2026-02-13",
    "fourteen may, 2026-05-14",
    "december thirty two zero two five, 2025-12-30|2025-12-13",
    "thirty one may, 2026-05-31"
  })
  void knowsThatThirteenSoundsLikeThirty(String words, String dates) {
    assertThat(Listener.hear(FieldId.DATE, words)).isEqualTo(dates);
  }

  @ParameterizedTest
  @CsvSource({
    "one six zero six",
    "sixteen six",
    "june",
    "zero june",
    "three two may",
    "three one june",
    "thirty february",
    "two nine february two zero two five",
    "one six june two six",
    "one june six june",
    "june june six",
    "one hundred june",
    "one point six june",
    "first second june",
    "first two june",
    "june two first",
    "june first two",
    "june second zero",
    "may third one",
    "june two zero two five",
    "june twenty twenty six",
    "one june one eight nine nine"
  })
  void saysHowToSayIt(String words) {
    assertThat(Listener.hear(FieldId.DATE, words))
        .isEqualTo("? say the day, then the month by its name");
  }

  @ParameterizedTest
  @CsvSource({
    "0616, 2026-06-16",
    "0620, 2026-06-20",
    "0621, 2025-06-21",
    "0101, 2026-01-01",
    "1231, 2025-12-31",
    "0229, 2024-02-29",
    "20260616, 2026-06-16",
    "20240229, 2024-02-29"
  })
  void takesADayOnTheKeypadAsTheScreenShowsIt(String keys, LocalDate date) {
    assertThat(keyed(keys))
        .isEqualTo(new Heard.One(new org.calamus.core.record.FieldValue.Day(date)));
  }

  @ParameterizedTest
  @CsvSource({"1606", "616", "0631", "0000", "0600", "20250229", "16062026", "260616", "202606161"})
  void saysHowToStrikeIt(String keys) {
    assertThat(keyed(keys))
        .isEqualTo(
            new Heard.No("a date is month and day, such as 0616, or with its year, 20260616"));
  }

  private static Heard keyed(String keys) {
    return ValueReader.keyed(DATE, keys, Fenwick.expected(Optional.empty()));
  }

  /** It is a word of the spelling alphabet and a month. */
  @Test
  void novemberIsALetterWhereADateIsNeitherAskedNorNamed() {
    assertThat(Listener.hear(FieldId.SPECIES, "whiskey bravo november uniform")).isEqualTo("WBNU");
    assertThat(Listener.hear(FieldId.DATE, "species whiskey bravo november uniform"))
        .isEqualTo("SPECIES WBNU");
    assertThat(Listener.hear(FieldId.SPECIES, "capture date five november"))
        .isEqualTo("DATE 2025-11-05");
  }

  @Test
  void aNameWithAMonthThatIsNotListenedForGetsAHint() {
    assertThat(Listener.hear(FieldId.WING, "capture date one six [unk]"))
        .isEqualTo("? say capture date alone, then its value");
    assertThat(Listener.hear(FieldId.DATE, "capture date one six [unk]")).isEqualTo("? ");
  }
}
