package org.calamus.core.form;

import java.math.BigDecimal;
import java.util.List;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Unit;

/**
 * The order in which a bird is asked for: what identifies it first, so that the record is valid
 * however early the bird must go, and mass last, since most birds are released from the scale.
 *
 * <p>Common practice, no published source.
 */
public final class LandbirdForm {

  private LandbirdForm() {}

  /**
   * The form over the given tables.
   *
   * <p>The limits of the measured fields are those of any landbird that is held in one hand: wing
   * chords of 25 to 400 mm and masses of 1.5 to 1500 g (common practice, no published source).
   */
  public static Form of(SpeciesTable species, CodeTable age, CodeTable sex) {
    return new Form(
        List.of(
            new FieldSpec(FieldId.BAND, "Band number", "band", new FieldKind.Band(), true),
            new FieldSpec(
                FieldId.SPECIES, "Species", "species", new FieldKind.Coded(species.codes()), true),
            new FieldSpec(FieldId.AGE, "Age", "age", new FieldKind.Coded(age), true),
            new FieldSpec(FieldId.SEX, "Sex", "sex", new FieldKind.Coded(sex), true),
            measured(FieldId.WING, "Wing chord", "wing", Unit.MILLIMETRE, "25", "400"),
            measured(FieldId.MASS, "Mass", "mass", Unit.GRAM, "1.5", "1500")));
  }

  private static FieldSpec measured(
      FieldId id, String label, String spoken, Unit unit, String least, String most) {
    FieldKind kind =
        new FieldKind.Measured(unit, new BigDecimal(least), new BigDecimal(most), decimals(unit));
    return new FieldSpec(id, label, spoken, kind, false);
  }

  private static int decimals(Unit unit) {
    return unit == Unit.GRAM ? 2 : 1;
  }
}
