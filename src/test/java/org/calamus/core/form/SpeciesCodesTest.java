package org.calamus.core.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The codes and numbers of the program's species against what others have published. */
class SpeciesCodesTest {

  /**
   * Where the Bird Banding Laboratory's code is not that of the rule, and why. The decisions are
   * those of the public copy of a species list of the Patuxent Wildlife Research Center (repository
   * dmasaki/pwrc-bpp, species.csv); SALS as used in public data sets.
   */
  private static final Map<String, String> DECIDED =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("BANS", "Bank Swallow, BASW with the Barn Swallow"),
              Map.entry("BARS", "Barn Swallow, BASW with the Bank Swallow"),
              Map.entry("BLBW", "Blackburnian Warbler, BLWA with the Blackpoll Warbler"),
              Map.entry("BLPW", "Blackpoll Warbler, BLWA with the Blackburnian Warbler"),
              Map.entry("BTNW", "Black-throated Green Warbler, BTGW with the Black-throated Gray"),
              Map.entry("BTYW", "Black-throated Gray Warbler, BTGW with the Black-throated Green"),
              Map.entry("CARW", "Carolina Wren, CAWR with the Cactus Wren and the Canyon Wren"),
              Map.entry("CEDW", "Cedar Waxwing, CEWA with the Cerulean Warbler"),
              Map.entry("CERW", "Cerulean Warbler, CEWA with the Cedar Waxwing"),
              Map.entry("CONW", "Connecticut Warbler, COWA with the Colima Warbler"),
              Map.entry("LAZB", "Lazuli Bunting, LABU with the Lark Bunting"),
              Map.entry("MGWA", "MacGillivray's Warbler, MAWA with the Magnolia Warbler"),
              Map.entry("PRAW", "Prairie Warbler, PRWA with the Prothonotary Warbler"),
              Map.entry("PROW", "Prothonotary Warbler, PRWA with the Prairie Warbler"),
              Map.entry("SALS", "Saltmarsh Sparrow, SASP with the Savannah Sparrow"),
              Map.entry("SAVS", "Savannah Sparrow, SASP with the Saltmarsh Sparrow and others"),
              Map.entry("TRES", "Tree Swallow, TRSW with the Trumpeter Swan")));

  private static Species species(String code) {
    return Fenwick.species().byCode(code).orElseThrow(() -> new AssertionError(code));
  }

  private static List<Species> all() {
    return Fenwick.species().species();
  }

  @Test
  void everyCodeFollowsTheRuleOrADecision() {
    Map<String, String> others = new TreeMap<>();
    for (Species species : all()) {
      String code = codeByRule(species.name());
      if (!code.equals(species.code())) {
        others.put(species.code(), species.name() + ", " + code);
      }
    }
    assertThat(others.keySet()).isEqualTo(DECIDED.keySet());
    others.forEach((code, name) -> assertThat(DECIDED.get(code)).startsWith(name + " with"));
  }

  /**
   * Klimkiewicz and Robbins 1978, North American Bird Bander 3:16-25: four letters of one word; two
   * and two of two words; one, one and two of three, or two, one and one where only the last two
   * are joined by a hyphen; one each of four.
   */
  private static String codeByRule(String name) {
    String letters = name.replace("'", "").toUpperCase(Locale.ROOT);
    String[] words = letters.split("[ -]");
    boolean isJoinedBehind = letters.matches("[^ -]+ [^ -]+-[^ -]+");
    return switch (words.length) {
      case 1 -> words[0].substring(0, 4);
      case 2 -> words[0].substring(0, 2) + words[1].substring(0, 2);
      case 3 ->
          isJoinedBehind
              ? words[0].substring(0, 2) + words[1].charAt(0) + words[2].charAt(0)
              : "" + words[0].charAt(0) + words[1].charAt(0) + words[2].substring(0, 2);
      default ->
          Stream.of(words).limit(4).map(w -> w.substring(0, 1)).collect(Collectors.joining());
    };
  }

  /** Codes that look or sound alike; the same public copy of the Patuxent list. */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          CARW, Carolina Wren
          BTBW, Black-throated Blue Warbler
          BTNW, Black-throated Green Warbler
          BTYW, Black-throated Gray Warbler
          BLJA, Blue Jay
          BLGR, Blue Grosbeak
          BLPW, Blackpoll Warbler
          BLBW, Blackburnian Warbler
          NOWA, Northern Waterthrush
          LOWA, Louisiana Waterthrush
          TEWA, Tennessee Warbler
          NAWA, Nashville Warbler
          OCWA, Orange-crowned Warbler
          SWTH, Swainson's Thrush
          HETH, Hermit Thrush
          GCTH, Gray-cheeked Thrush
          VEER, Veery
          WTSP, White-throated Sparrow
          WCSP, White-crowned Sparrow
          TRES, Tree Swallow
          AMRE, American Redstart
          AMRO, American Robin
          REVI, Red-eyed Vireo
          RWBL, Red-winged Blackbird
          HOFI, House Finch
          HOWR, House Wren
          YEWA, Yellow Warbler
          CEDW, Cedar Waxwing
          CERW, Cerulean Warbler
          SAVS, Savannah Sparrow
          BARS, Barn Swallow
          BANS, Bank Swallow
          """)
  void codesThatAreEasilyTakenForEachOtherMeanTheRightBird(String code, String name) {
    assertThat(species(code).name()).isEqualTo(name);
  }

  /** Numbers that the Laboratory keeps for what the checklist lumps; the same public copy. */
  @ParameterizedTest
  @CsvSource({
    "MYWA,6550", "AUWA,6560", "SCJU,5670", "ORJU,5671", "YSFL,4120", "RSFL,4130", "EWCS,5541",
    "GWCS,5550", "WCSP,5540", "TRFL,4669", "ALFL,4661", "WIFL,4660", "WPWA,6720", "RWBL,4980"
  })
  void numbersAreTheLaboratorys(String code, String number) {
    assertThat(species(code).number()).isEqualTo(number);
  }

  @Test
  void codesAreFourLettersAndNumbersFourDigits() {
    for (Species species : all()) {
      assertThat(species.code()).matches("[A-Z]{4}");
      assertThat(species.number()).as(species.code()).matches("\\d{4}|");
    }
    // whether the number of the yellow palm warbler is 6729 or means any palm warbler is not known
    assertThat(all().stream().filter(s -> s.number().isEmpty()))
        .extracting(Species::code)
        .containsExactly("YPWA");
  }
}
