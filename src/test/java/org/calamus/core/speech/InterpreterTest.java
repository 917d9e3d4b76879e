package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What banders say and what it means (common practice, no published source). */
class InterpreterTest {

  private static final BandNumber NEXT = new BandNumber("2841", "55602");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # in the field | words | value; a hint behind a question mark where there is none
          BAND    | two eight four one five five six oh two         | 2841-55602
          BAND    | two eight four one five five six zero two       | 2841-55602
          BAND    | band two eight four one five five six zero two  | BAND 2841-55602
          BAND    | eight eight eight eight eight eight zero one    | 888-88801
          BAND    | six oh three                                    | 2841-55603
          BAND    | six niner niner                                 | 2841-55699
          BAND    | one one                                         | 2841-55611
          BAND    | five five seven zero zero                       | 2841-55700
          SPECIES | white breasted nuthatch                         | SPECIES WBNU
          SPECIES | redstart                                        | SPECIES AMRE
          SPECIES | catbird                                         | SPECIES GRCA
          SPECIES | yellowthroat                                    | SPECIES COYE
          SPECIES | swainson's thrush                               | SPECIES SWTH
          SPECIES | alpha mike romeo echo                           | AMRE
          SPECIES | species alpha mike romeo echo                   | SPECIES AMRE
          SPECIES | seven two seven zero                            | WBNU
          SPECIES | black and white warbler                         | SPECIES BAWW
          AGE     | after hatch year                                | AGE AHY
          AGE     | after hatching year                             | AGE AHY
          AGE     | hatch year                                      | AGE HY
          AGE     | second year                                     | AGE SY
          AGE     | after second year                               | AGE ASY
          AGE     | local                                           | AGE L
          AGE     | unknown                                         | U
          AGE     | age unknown                                     | AGE U
          AGE     | alpha hotel yankee                              | AHY
          AGE     | sierra yankee                                   | SY
          AGE     | age five                                        | AGE SY
          AGE     | one                                             | AHY
          AGE     | two                                             | HY
          AGE     | four                                            | L
          AGE     | six                                             | ASY
          SEX     | male                                            | SEX M
          SEX     | female                                          | SEX F
          SEX     | unknown                                         | U
          SEX     | sex unknown                                     | SEX U
          SEX     | gender female                                   | SEX F
          SEX     | mike                                            | M
          SEX     | foxtrot                                         | F
          WING    | ninety two                                      | 92
          WING    | nine two                                        | 92
          WING    | niner two                                       | 92
          WING    | wing ninety two                                 | WING 92
          WING    | wing chord nine two                             | WING 92
          WING    | one hundred five                                | 105
          WING    | one oh five                                     | 105
          WING    | one hundred and five                            | 105
          WING    | one hundred and twenty two                      | 122
          WING    | eighteen nine                                   | 89 or 18.9?
          MASS    | wing eighteen nine                              | WING 89 or 18.9?
          NET     | twelve                                          | 12
          NET     | net one two                                     | NET 12
          STATUS  | three hundred                                   | 300
          WING    | one ninety two                                  | 192
          WING    | six one point five                              | 61.5
          MASS    | eleven point four                               | 11.4
          MASS    | one one point four                              | 11.4
          MASS    | one one decimal four                            | 11.4
          MASS    | ten                                             | 10
          MASS    | weight two two point three                      | MASS 22.3
          MASS    | mass two two point three                        | MASS 22.3
          MASS    | two two point three zero                        | 22.30
          KIND    | new band                                        | KIND N
          KIND    | recapture                                       | KIND R
          KIND    | band lost                                       | KIND L
          SKULL   | six                                             | 6
          MASS    | skull six                                       | SKULL 6
          SKULL   | none                                            | 0
          FLIGHT_MOULT | none                                       | N
          FLIGHT_MOULT | no molt                                    | FLIGHT_MOULT N
          MASS    | fat two                                         | FAT 2
          HOW_AGED | skull                                          | HOW_AGED SK
          HOW_AGED | skull plumage molt limit                       | HOW_AGED SK PL LP
          HOW_AGED | skull six                                      | SKULL 6
          HOW_AGED | papa lima                                      | PL
          HOW_AGED | sierra kilo papa lima                          | SK PL
          HOW_AGED | one                                            | SK
          MASS    | how aged skull wing                             | HOW_AGED SK WL
          MASS    | how sexed brood patch                           | HOW_SEXED BP
          HOW_SEXED | plumage                                       | HOW_SEXED PL
          HOW_AGED | how sexed plumage                              | HOW_SEXED PL
          MASS    | molt limit                                      | HOW_AGED LP
          BAND_SIZE | one bravo                                     | 1B
          BAND_SIZE | zero alpha                                    | 0A
          BAND_SIZE | size one                                      | BAND_SIZE 1
          LEG_GAUGE | seven alpha short                             | LEG_GAUGE 7AS
          MASS    | band size three bravo                           | BAND_SIZE 3B
          TIME    | zero eight four zero                            | 08:40
          TIME    | fourteen forty five                             | 14:45
          TIME    | oh eight oh five                                | 08:05
          TIME    | zero nine hundred                               | 09:00
          TIME    | fourteen hundred hours                          | 14:00
          HOW_AGED | skull none                                     | SKULL 0
          STATUS  | three zero zero                                 | 300
          MASS    | released early                                  | RELEASE EARLY
          MASS    | stressed wing injury                            | DISPOSITION S W
          """)
  void understandsWhatBandersSay(FieldId open, String words, String value) {
    assertThat(Listener.hear(open, NEXT, words)).isEqualTo(value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          WING    | twenty two three           | ? say twenty two point three, or two two three
          MASS    | eleven four                | ? say eleven point four, or one one four
          MASS    | nineteen five one          | ? say it digit by digit
          MASS    | one fifteen two            | ? say one fifteen point two, or one one five two
          MASS    | point four                 | ? say zero point four
          MASS    | four point                 | ? say the digits behind the point
          MASS    | four point ten             | ? say it digit by digit
          MASS    | four point two point one   | ? say it digit by digit
          WING    | ninety zero                | ? say ninety point zero, or nine zero zero
          WING    | hundred                    | ? say it digit by digit
          WING    | zero hundred               | ? say it digit by digit
          WING    | nine two nine two nine     | ? 5 digits, a number has four at most
          WING    | one hundred and            | ? say it digit by digit
          WING    | fourteen hundred hours     | ? say it digit by digit
          NET     | ninety two                 | ? say it digit by digit
          WING    | unknown                    | ? say it digit by digit
          WING    | alpha                      | ? say it digit by digit
          BAND    | six                        | ? 1 digit, a band has eight or nine; or give its last three
          BAND    | five five six zero two one | ? 6 digits, a band has eight or nine; or give its last three
          BAND    | ninety two                 | ? say the digits
          SPECIES | alpha mike                 | ? that is not in the species table
          SPECIES | unknown                    | ? that is not in the species table
          SPECIES | nine nine nine nine        | ? that is not in the species table
          SPECIES | ninety two                 | ? not one species
          AGE     | three                      | ? that is not in the age table
          HOW_AGED | skull skull               | HOW_AGED ? one of them stands twice
          HOW_AGED | papa golf                 | ? one of them is not in the how-aged table
          HOW_AGED | ninety                    | ? not one how-aged
          SKULL   | seven                      | ? that is not in the skull table
          TIME    | eight forty                | ? say zero eight four zero
          TIME    | eight four zero            | ? say zero eight four zero
          TIME    | hundred hours five         | ? say the time in four digits
          TIME    | two five zero zero         | ? say the time in four digits
          TIME    | wing                       | open WING
          NOTE    | nine                       | ? remarks are spoken as a memo or typed
          MASS    | plumage                    | ? name the field first
          AGE     | age male                   | AGE ? that is not in the age table
          """)
  void hintsHowToSayWhatItCannotTake(FieldId open, String words, String hint) {
    assertThat(Listener.hear(open, NEXT, words)).isEqualTo(hint);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          AGE | hatched this year        | AGE HY
          AGE | after hatching year      | AGE AHY
          AGE | three                    | HY
          AGE | four                     | AHY
          AGE | alpha                    | A4Y
          AGE | fourth year              | AGE 4Y
          BROOD_PATCH | patch present    | BROOD_PATCH P
          HOW_SEXED | bravo              | BP
          """)
  void understandsTheCodesOfEuringWhereTheyAreChosen(FieldId open, String words, String value) {
    assertThat(Listener.hearInEuring(open, words)).isEqualTo(value);
  }

  @ParameterizedTest
  @CsvSource({
    "oh eight forty, 08:40|08:14",
    "twenty two thirteen, 22:13|22:30",
    "twelve thirty, 12:30|12:13",
    "oh eight sixteen, 08:16",
    "fourteen hundred, 14:00"
  })
  void knowsATimeThatSoundsLikeAnother(String words, String values) {
    assertThat(Listener.hear(FieldId.TIME, words)).isEqualTo(values);
  }

  @ParameterizedTest
  @CsvSource({"STATUS, three eighteen, 318|380", "STATUS, three fourteen, 314", "NET, twelve, 12"})
  void knowsACodeThatSoundsLikeAnotherOfItsTable(FieldId open, String words, String values) {
    assertThat(Listener.hear(open, words)).isEqualTo(values);
  }

  @ParameterizedTest
  @CsvSource({"7", "6", "10", "1"})
  void takesNoBandOfAWrongCountOfDigits(int count) {
    assertThat(Listener.hear(FieldId.BAND, NEXT, "four ".repeat(count))).startsWith("? " + count);
  }

  @Test
  void takesTheLastDigitsOnlyWhereABandIsExpected() {
    assertThat(Listener.hear(FieldId.BAND, "six zero two"))
        .isEqualTo("? 3 digits, a band has eight or nine");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          wing ninety two weight eleven point four      | WING 92, MASS 11.4
          weight one one point four wing chord nine two | MASS 11.4, WING 92
          song sparrow second year male                 | SPECIES SOSP, AGE SY, SEX M
          song sparrow wing six six female              | SPECIES SOSP, WING 66, SEX F
          age unknown sex unknown                       | AGE U, SEX U
          species song sparrow year class five          | SPECIES SOSP, AGE SY
          wing eleven four weight two two point three   | WING ? say eleven point four, or one one four, MASS 22.3
          """)
  void takesSeveralValuesInOneBreath(String words, String values) {
    assertThat(Listener.hear(FieldId.BAND, words)).isEqualTo(values);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          correction                        | order CORRECT
          correction wing                   | order CORRECT WING
          negative                          | order NEGATIVE
          erase age                         | order ERASE AGE
          correction nine two               | correct 92
          negative nine two                 | correct 92
          correction wing nine two          | correct WING 92
          correction second year            | correct AGE SY
          correction wing nine two sex male | correct WING 92, SEX M
          wing                              | open WING
          skull                             | open SKULL
          erase skull                       | order ERASE SKULL
          affirmative                       | order AFFIRM
          say again                         | order REPEAT
          read back                         | order READBACK
          next field                        | order NEXT
          save record                       | order SAVE
          abandon record                    | order ABANDON
          end session                       | order END
          """)
  void understandsCorrectionsAndCommands(String words, String meaning) {
    assertThat(
            Listener.text(Listener.meaning(FieldId.MASS, Optional.of(FieldId.WING), null, words)))
        .isEqualTo(meaning);
  }

  @ParameterizedTest
  @CsvSource({
    "nine two save record",
    "save record nine two",
    "save record wing",
    "affirm wing",
    "end session sex",
    "next field wing",
    "wing wing",
    "wing nine two wing",
    "wing nine okay",
    "correction correction",
    "wing nine giraffe"
  })
  void takesNothingOfAnUtteranceThatDoesNotMakeSenseAsAWhole(String words) {
    assertThat(Listener.hear(FieldId.WING, words)).isEqualTo("? ");
  }

  @ParameterizedTest
  @CsvSource({"okay", "little bird", "okay little bird", "[unk]", "[unk] [unk]", "''"})
  void staysSilentOnChatter(String words) {
    assertThat(Listener.hear(FieldId.WING, words)).isEqualTo("chatter");
  }

  @Test
  void hearsACorrectionWithoutANameForTheFieldGivenLast() {
    Meaning meaning =
        Listener.meaning(FieldId.AGE, Optional.of(FieldId.WING), null, "correction nine two");
    assertThat(Listener.text(meaning)).isEqualTo("correct 92");
  }

  @ParameterizedTest
  @CsvSource({
    "AGE,         disposition [unk],       'say disposition alone, then its value'",
    "WING,        status [unk],            'say status alone, then its value'",
    "DISPOSITION, disposition [unk],       ''",
    "WING,        gender [unk],            ''",
    "AGE,         wing [unk],              ''",
    "AGE,         male [unk],              ''"
  })
  void interpretTellsToNameAFieldAloneWhereItsCodesAreNotListenedFor(
      FieldId open, String words, String hint) {
    assertThat(Listener.hear(open, words)).isEqualTo("? " + hint);
  }

  @Test
  void takesNoUnnamedCorrectionBeforeAnythingWasGiven() {
    assertThat(Listener.hear(FieldId.AGE, "correction nine two")).isEqualTo("? ");
  }

  @Test
  void ohAloneIsNoZero() {
    assertThat(interpreted("oh", FieldId.FAT)).isEqualTo(new Meaning.Unclear("say zero"));
    assertThat(interpreted("zero", FieldId.FAT)).isInstanceOf(Meaning.Values.class);
    assertThat(interpreted("fat oh", FieldId.WING)).isInstanceOf(Meaning.Values.class);
    assertThat(interpreted("nine oh", FieldId.WING)).isInstanceOf(Meaning.Values.class);
  }

  @Test
  void noTakesBackOnlyForANumber() {
    assertThat(interpreted("no", FieldId.WING)).isInstanceOf(Meaning.Unclear.class);
    assertThat(interpreted("no male", FieldId.WING)).isInstanceOf(Meaning.Unclear.class);
    assertThat(interpreted("no seven three", FieldId.WING))
        .isEqualTo(interpreted("correction seven three", FieldId.WING))
        .isInstanceOf(Meaning.Values.class);
    assertThat(interpreted("no moult limit", FieldId.HOW_AGED))
        .isInstanceOf(Meaning.Values.class)
        .isNotEqualTo(interpreted("correction moult limit", FieldId.HOW_AGED));
  }

  private static Meaning interpreted(String words, FieldId asked) {
    return new Interpreter(Fenwick.vocabulary(), Fenwick.form())
        .interpret(
            Utterance.of(words),
            Optional.of(asked),
            Optional.of(asked),
            Fenwick.expected(Optional.empty()));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          SPECIES, mourning dove dickcissel
          SPECIES, ovenbird six
          WING,    wing nine two wing nine three
          WING,    nine two wing nine three
          """)
  void ofTwoValuesForOneFieldInABreathNoneIsTaken(FieldId open, String words) {
    assertThat(Listener.hear(open, NEXT, words)).isEqualTo("? ");
  }
}
