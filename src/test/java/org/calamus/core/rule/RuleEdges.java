package org.calamus.core.rule;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.FieldKind;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.support.Fenwick;

/**
 * The rules of single birds on both sides of their edges, as tables: rule, severity, the field the
 * finding is about, the day, what both birds have, what the last bird has that passes, what the
 * first has that does not, and what would fit as it is shown. The field given last is the one that
 * was just filled. A day within a bird takes the place of the row's.
 */
final class RuleEdges {

  private static final String FIELDS =
      """
      species.listed         |REFUSED|SPECIES    |2026-06-01|       |SPECIES=WBNU   |SPECIES=WBNX   |codes would fit
      kind.listed            |REFUSED|KIND       |2026-06-01|       |KIND=N         |KIND=X         |N, R, F, C, A, U, L, D would fit
      band-size.listed       |REFUSED|BAND_SIZE  |2026-06-01|       |BAND_SIZE=1B   |BAND_SIZE=1Y   |would fit
      leg-gauge.listed       |REFUSED|LEG_GAUGE  |2026-06-01|       |LEG_GAUGE=1B   |LEG_GAUGE=1Y   |would fit
      age.listed             |REFUSED|AGE        |2026-06-01|       |AGE=SY         |AGE=XY         |SY, ASY
      how-aged.listed        |REFUSED|HOW_AGED   |2026-06-01|       |HOW_AGED=PL    |HOW_AGED=XX    |would fit
      how-aged.listed        |REFUSED|HOW_AGED   |2026-06-01|       |HOW_AGED=PL+LP |HOW_AGED=PL+XX |would fit
      how-aged.listed        |REFUSED|HOW_AGED   |2026-06-01|       |HOW_AGED=PL+LP+FF+PC|HOW_AGED=PL+LP+FF+PC+MR|at most 4 codes would fit
      sex.listed             |REFUSED|SEX        |2026-06-01|       |SEX=M          |SEX=X          |U, M, F would fit
      how-sexed.listed       |REFUSED|HOW_SEXED  |2026-06-01|       |HOW_SEXED=PL   |HOW_SEXED=XX   |would fit
      how-sexed.listed       |REFUSED|HOW_SEXED  |2026-06-01|       |HOW_SEXED=PL+BP+CP+WL|HOW_SEXED=PL+BP+CP+WL+TL|at most 4 codes would fit
      skull.listed           |REFUSED|SKULL      |2026-06-01|       |SKULL=6        |SKULL=7        |0, 1, 2, 3, 4, 5, 6, 8 would fit
      cloacal-protuberance.listed|REFUSED|CLOACAL_PROTUBERANCE|2026-06-01||CLOACAL_PROTUBERANCE=3|CLOACAL_PROTUBERANCE=4|0, 1, 2, 3 would fit
      brood-patch.listed     |REFUSED|BROOD_PATCH|2026-06-01|       |BROOD_PATCH=5  |BROOD_PATCH=6  |0, 1, 2, 3, 4, 5
      fat.listed             |REFUSED|FAT        |2026-06-01|       |FAT=7          |FAT=38         |0, 1, 2, 3, 4, 5, 6, 7
      body-moult.listed      |REFUSED|BODY_MOULT |2026-06-01|       |BODY_MOULT=4   |BODY_MOULT=5   |0, 1, 2, 3, 4 would fit
      flight-moult.listed    |REFUSED|FLIGHT_MOULT|2026-06-01|      |FLIGHT_MOULT=J |FLIGHT_MOULT=X |N, A, S, J would fit
      feather-wear.listed    |REFUSED|FEATHER_WEAR|2026-06-01|      |FEATHER_WEAR=5 |FEATHER_WEAR=6 |0, 1, 2, 3, 4, 5 would fit
      juvenal-plumage.listed |REFUSED|JUVENAL_PLUMAGE|2026-06-01|   |JUVENAL_PLUMAGE=3|JUVENAL_PLUMAGE=4|0, 1, 2, 3 would fit
      net.listed             |REFUSED|NET        |2026-06-01|       |NET=12         |NET=13         |1, 2, 3, 12 would fit
      bander.listed          |REFUSED|BANDER     |2026-06-01|       |BANDER=QX      |BANDER=QQ      |QX, ZB would fit
      scribe.listed          |REFUSED|SCRIBE     |2026-06-01|       |SCRIBE=ZB      |SCRIBE=ZZ      |QX, ZB would fit
      status.listed          |REFUSED|STATUS     |2026-06-01|       |STATUS=300     |STATUS=399     |would fit
      release.listed         |REFUSED|RELEASE    |2026-06-01|       |RELEASE=DIED   |RELEASE=GONE   |would fit
      disposition.listed     |REFUSED|DISPOSITION|2026-06-01|       |DISPOSITION=W  |DISPOSITION=Q  |would fit
      wing.range             |REFUSED|WING       |2026-06-01|       |WING=25        |WING=24.9      |25 to 400 mm
      wing.range             |REFUSED|WING       |2026-06-01|       |WING=400       |WING=400.5     |25 to 400 mm
      tail.range             |REFUSED|TAIL       |2026-06-01|       |TAIL=15        |TAIL=14.9      |15 to 400 mm
      tail.range             |REFUSED|TAIL       |2026-06-01|       |TAIL=400       |TAIL=400.1     |15 to 400 mm
      tarsus.range           |REFUSED|TARSUS     |2026-06-01|       |TARSUS=2       |TARSUS=1.99    |2 to 120 mm
      tarsus.range           |REFUSED|TARSUS     |2026-06-01|       |TARSUS=120     |TARSUS=120.1   |2 to 120 mm
      culmen.range           |REFUSED|CULMEN     |2026-06-01|       |CULMEN=3       |CULMEN=2.9     |3 to 80 mm
      culmen.range           |REFUSED|CULMEN     |2026-06-01|       |CULMEN=80      |CULMEN=80.1    |3 to 80 mm
      mass.range             |REFUSED|MASS       |2026-06-01|       |MASS=1.5       |MASS=1.49      |1.5 to 1500 g
      mass.range             |REFUSED|MASS       |2026-06-01|       |MASS=1500      |MASS=1500.01   |1.5 to 1500 g
      wing.precision         |REFUSED|WING       |2026-06-01|       |WING=92.5      |WING=92.55     |one decimal place. Give it with one
      tail.precision         |REFUSED|TAIL       |2026-06-01|       |TAIL=47.5      |TAIL=47.55     |one decimal place. Give it with one
      tarsus.precision       |REFUSED|TARSUS     |2026-06-01|       |TARSUS=19.15   |TARSUS=19.155  |two decimal places. Give it with two
      culmen.precision       |REFUSED|CULMEN     |2026-06-01|       |CULMEN=15.15   |CULMEN=15.155  |two decimal places. Give it with two
      mass.precision         |REFUSED|MASS       |2026-06-01|       |MASS=22.35     |MASS=22.355    |two decimal places. Give it with two
      """;

  /** Months from memory: Pyle 1997; the codes: Bird Banding Laboratory. */
  private static final String AGES =
      """
      age.date         |REFUSED|AGE  |2026-03-31|SPECIES=WBNU|AGE=SY              |AGE=HY              |AHY, SY, ASY would fit
      age.date         |REFUSED|AGE  |2026-03-31|SPECIES=WBNU|DAY=2026-05-16 AGE=L|AGE=L               |AHY, SY, ASY would fit
      age.date         |REFUSED|AGE  |2026-05-15|SPECIES=WBNU|DAY=2026-09-01 AGE=U|AGE=U               |AHY, SY, ASY would fit
      age.date         |ASKS   |AGE  |2026-05-15|SPECIES=WBNU|DAY=2026-05-16 AGE=HY|AGE=HY             |AHY, SY, ASY would fit
      age.date         |ASKS   |AGE  |2026-09-01|SPECIES=WBNU|DAY=2026-08-31 AGE=SY|AGE=SY             |U, L, HY, AHY would fit
      age.date         |ASKS   |AGE  |2026-03-14|            |SPECIES=WBNU AGE=AHY|SPECIES=MODO AGE=HY |AHY, SY, ASY would fit
      age.juvenal      |ASKS   |JUVENAL_PLUMAGE|2026-07-01||AGE=AHY JUVENAL_PLUMAGE=2|AGE=AHY JUVENAL_PLUMAGE=3|L or HY
      age.juvenal      |ASKS   |JUVENAL_PLUMAGE|2026-07-01|JUVENAL_PLUMAGE=3|AGE=HY|AGE=U|L or HY
      age.juvenal      |ASKS   |JUVENAL_PLUMAGE|2026-07-01|JUVENAL_PLUMAGE=3|AGE=L |AGE=SY|L or HY
      age.skull-young  |ASKS   |SKULL|2026-09-30|SPECIES=WBNU AGE=HY|SKULL=5       |SKULL=6             |0 to 5 would fit before 1 October
      age.skull-young  |ASKS   |SKULL|2026-09-30|SPECIES=WBNU AGE=HY|DAY=2026-10-01 SKULL=6|SKULL=6     |0 to 5 would fit before 1 October
      age.skull-young  |ASKS   |SKULL|2026-09-14|SPECIES=GCKI AGE=HY|DAY=2026-09-15 SKULL=6|SKULL=6     |0 to 5 would fit before 15 September
      age.skull-adult  |ASKS   |SKULL|2026-08-31|AGE=AHY|SKULL=5                   |SKULL=4             |until the end of August a skull of 5 or 6 would fit
      age.skull-adult  |ASKS   |SKULL|2026-08-31|AGE=ASY|DAY=2026-09-01 SKULL=4    |SKULL=0             |until the end of August a skull of 5 or 6 would fit
      age.skull-adult  |ASKS   |SKULL|2026-06-01|SKULL=4|AGE=SY                    |AGE=ASY             |until the end of August a skull of 5 or 6 would fit
      age.protuberance |ASKS   |CLOACAL_PROTUBERANCE|2026-07-01|AGE=HY|CLOACAL_PROTUBERANCE=0|CLOACAL_PROTUBERANCE=1|a score of 0 would fit
      age.protuberance |ASKS   |CLOACAL_PROTUBERANCE|2026-07-01|CLOACAL_PROTUBERANCE=1|AGE=SY|AGE=L      |a score of 0 would fit
      age.patch        |ASKS   |BROOD_PATCH|2026-07-01|AGE=HY|BROOD_PATCH=0        |BROOD_PATCH=1       |a score of 0 would fit
      age.patch        |ASKS   |BROOD_PATCH|2026-07-01|BROOD_PATCH=1|AGE=AHY       |AGE=L               |a score of 0 would fit
      age.how          |ASKS   |AGE  |2026-06-01|AGE=SY|HOW_AGED=BP+LP             |HOW_AGED=BP         |AHY would fit, or name what showed it
      age.how          |ASKS   |AGE  |2026-06-01|HOW_AGED=CP|AGE=AHY               |AGE=ASY             |AHY would fit, or name what showed it
      age.how-empty    |NOTES  |AGE  |2026-06-01|RELEASE=RELEASED|AGE=AHY          |AGE=SY              |How aged is empty
      age.how-empty    |NOTES  |AGE  |2026-06-01|AGE=SY|RELEASE=ESCAPED            |RELEASE=RELEASED    |How aged is empty
      age.how-empty    |NOTES  |AGE  |2026-06-01|AGE=SY|HOW_AGED=LP RELEASE=RELEASED|RELEASE=RELEASED   |How aged is empty
      """;

  /** Who has which breeding character is from memory: Pyle 1997, species accounts. */
  private static final String SEXES =
      """
      sex.protuberance   |ASKS |CLOACAL_PROTUBERANCE|2026-06-01|SEX=F|CLOACAL_PROTUBERANCE=1|CLOACAL_PROTUBERANCE=2|0, or at most 1
      sex.protuberance   |ASKS |CLOACAL_PROTUBERANCE|2026-06-01|CLOACAL_PROTUBERANCE=3|SEX=M|SEX=F                 |0, or at most 1
      sex.both           |ASKS |CLOACAL_PROTUBERANCE|2026-06-01|BROOD_PATCH=2|CLOACAL_PROTUBERANCE=1|CLOACAL_PROTUBERANCE=2|0 or 1 would fit
      sex.both           |ASKS |CLOACAL_PROTUBERANCE|2026-06-01|CLOACAL_PROTUBERANCE=2|BROOD_PATCH=1|BROOD_PATCH=2 |0 or 1 would fit
      sex.patch          |ASKS |BROOD_PATCH|2026-06-01|SPECIES=WBNU SEX=M|BROOD_PATCH=1     |BROOD_PATCH=2         |0 or 1 would fit
      sex.patch          |ASKS |BROOD_PATCH|2026-06-01|SPECIES=WBNU SEX=M|BROOD_PATCH=5     |BROOD_PATCH=4         |0 or 1 would fit
      sex.patch          |ASKS |BROOD_PATCH|2026-06-01|SEX=M BROOD_PATCH=3|SPECIES=DOWO     |SPECIES=WBNU          |0 or 1 would fit
      sex.patch          |ASKS |BROOD_PATCH|2026-06-01|SEX=M BROOD_PATCH=3|SPECIES=REVI     |SPECIES=WBNU          |0 or 1 would fit
      species.patch      |ASKS |BROOD_PATCH|2026-06-01|SPECIES=BHCO|BROOD_PATCH=0           |BROOD_PATCH=1         |0 would fit
      species.patch      |ASKS |BROOD_PATCH|2026-06-01|BROOD_PATCH=1|SPECIES=RWBL           |SPECIES=BHCO          |0 would fit
      brood-patch.season |ASKS |BROOD_PATCH|2026-03-31|SPECIES=WBNU|DAY=2026-04-01 BROOD_PATCH=2|BROOD_PATCH=2     |0, 1 or 5 would fit
      brood-patch.season |ASKS |BROOD_PATCH|2026-10-01|SPECIES=WBNU|DAY=2026-09-30 BROOD_PATCH=4|BROOD_PATCH=4     |0, 1 or 5 would fit
      brood-patch.season |ASKS |BROOD_PATCH|2026-03-31|SPECIES=WBNU|BROOD_PATCH=1           |BROOD_PATCH=2         |0, 1 or 5 would fit
      brood-patch.season |ASKS |BROOD_PATCH|2026-03-01|BROOD_PATCH=3|SPECIES=MODO           |SPECIES=WBNU          |0, 1 or 5 would fit
      sex.plumage        |ASKS |HOW_SEXED|2026-06-01|HOW_SEXED=PL|SPECIES=WBNU              |SPECIES=SOSP          |Sex U would fit
      sex.plumage        |ASKS |HOW_SEXED|2026-06-01|SPECIES=SOSP|HOW_SEXED=BP              |HOW_SEXED=PL          |Sex U would fit
      sex.plumage-young  |ASKS |HOW_SEXED|2026-07-01|SPECIES=AMRE HOW_SEXED=PL|AGE=SY       |AGE=HY                |Sex U would fit
      sex.plumage-young  |ASKS |HOW_SEXED|2026-07-01|AGE=HY HOW_SEXED=PL|SPECIES=GCKI       |SPECIES=AMRE          |Sex U would fit
      sex.by-protuberance|ASKS |HOW_SEXED|2026-06-01|HOW_SEXED=CP|SEX=M                     |SEX=F                 |Sex M or another code
      sex.by-patch       |ASKS |HOW_SEXED|2026-06-01|SPECIES=WBNU HOW_SEXED=BP|SEX=F        |SEX=M                 |Sex F or another code
      sex.by-patch       |ASKS |HOW_SEXED|2026-06-01|SEX=M HOW_SEXED=BP|SPECIES=DOWO        |SPECIES=BHCO          |Sex F or another code
      sex.how            |ASKS |HOW_SEXED|2026-06-01|SEX=U|HOW_SEXED=IC                     |HOW_SEXED=PL          |IC or NA would fit
      sex.how            |ASKS |HOW_SEXED|2026-06-01|HOW_SEXED=WL|SEX=M                     |SEX=U                 |IC or NA would fit
      sex.how-empty      |NOTES|SEX|2026-06-01|RELEASE=RELEASED|SEX=U                       |SEX=M                 |How sexed is empty
      sex.how-empty      |NOTES|SEX|2026-06-01|SEX=F|HOW_SEXED=BP RELEASE=RELEASED          |RELEASE=RELEASED      |How sexed is empty
      sex.by-wing        |ASKS |HOW_SEXED|2026-06-01|SPECIES=RWBL HOW_SEXED=WL|WING=117.5   |WING=117              |105 to 117 mm
      sex.by-wing        |ASKS |HOW_SEXED|2026-06-01|SPECIES=RWBL HOW_SEXED=WL|WING=104.5   |WING=105              |105 to 117 mm
      sex.by-wing        |ASKS |HOW_SEXED|2026-06-01|SPECIES=RWBL WING=110|HOW_SEXED=PL     |HOW_SEXED=WL          |105 to 117 mm
      """;

  private static final String HOW =
      """
      how-aged.skull      |ASKS|HOW_AGED |2026-06-01|HOW_AGED=SK|SKULL=6             |SKULL=8               |0 to 6 would fit
      how-aged.skull      |ASKS|HOW_AGED |2026-06-01|HOW_AGED=SK|WING=92             |MASS=22.3             |Skull is empty
      how-aged.wing       |ASKS|HOW_AGED |2026-06-01|HOW_AGED=WL|WING=92 MASS=22.3   |MASS=22.3             |Wing chord is empty
      how-aged.tail       |ASKS|HOW_AGED |2026-06-01|HOW_AGED=TL|TAIL=47 MASS=22.3   |MASS=22.3             |Tail is empty
      how-aged.brood-patch|ASKS|HOW_AGED |2026-06-01|HOW_AGED=BP|BROOD_PATCH=1       |BROOD_PATCH=0         |above 0 would fit
      how-aged.brood-patch|ASKS|HOW_AGED |2026-06-01|HOW_AGED=BP|BROOD_PATCH=P       |BROOD_PATCH=0         |above 0 would fit
      how-aged.cloacal-protuberance|ASKS|HOW_AGED|2026-06-01|HOW_AGED=CP|CLOACAL_PROTUBERANCE=1|CLOACAL_PROTUBERANCE=0|above 0 would fit
      how-aged.note       |ASKS|HOW_AGED |2026-06-01|HOW_AGED=OT|NOTE=worn MASS=22.3 |MASS=22.3             |"other reason" wants a remark
      how-aged.recapture  |ASKS|HOW_AGED |2026-06-01|           |KIND=R HOW_AGED=RC  |KIND=N HOW_AGED=RC    |but this is a new band; a recapture or another code
      how-aged.recapture  |ASKS|HOW_AGED |2026-06-01|KIND=F HOW_AGED=RC|BAND=2841-55601|BAND=2841-55699      |no earlier capture; a recapture or another code
      how-aged.skull-unused|NOTES|SKULL  |2026-07-01|HOW_AGED=PL|SKULL=6             |SKULL=5               |SK is not among the codes
      how-aged.skull-unused|NOTES|SKULL  |2026-07-01|SKULL=2    |HOW_AGED=SK         |HOW_AGED=PL           |SK is not among the codes
      how-sexed.wing      |ASKS|HOW_SEXED|2026-06-01|HOW_SEXED=WL|WING=92 MASS=22.3  |MASS=22.3             |Wing chord is empty
      how-sexed.tail      |ASKS|HOW_SEXED|2026-06-01|HOW_SEXED=TL|TAIL=47 MASS=22.3  |MASS=22.3             |Tail is empty
      how-sexed.brood-patch|ASKS|HOW_SEXED|2026-06-01|HOW_SEXED=BP|BROOD_PATCH=1     |BROOD_PATCH=0         |above 0 would fit
      how-sexed.cloacal-protuberance|ASKS|HOW_SEXED|2026-06-01|HOW_SEXED=CP|CLOACAL_PROTUBERANCE=1|CLOACAL_PROTUBERANCE=0|above 0 would fit
      how-sexed.note      |ASKS|HOW_SEXED|2026-06-01|HOW_SEXED=OT|NOTE=crown MASS=22.3|MASS=22.3            |"other reason" wants a remark
      how-sexed.recapture |ASKS|HOW_SEXED|2026-06-01|           |KIND=R HOW_SEXED=RC |KIND=N HOW_SEXED=RC   |but this is a new band; a recapture or another code
      """;

  /** The ranges are the species table's; the station has thirty male nuthatches, all alike. */
  private static final String MEASURES =
      """
      wing.species     |ASKS|WING  |2026-06-01|SPECIES=WBNU      |WING=77   |WING=76.5 |77 to 100 mm
      wing.species     |ASKS|WING  |2026-06-01|SPECIES=WBNU      |WING=100  |WING=100.5|77 to 100 mm
      wing.species     |ASKS|WING  |2026-06-01|SPECIES=RWBL SEX=F|WING=117  |WING=117.5|87 to 117 mm for Red-winged Blackbird, female
      wing.species     |ASKS|WING  |2026-06-01|SPECIES=RWBL WING=120|SEX=M  |SEX=F     |87 to 117 mm
      tail.species     |ASKS|TAIL  |2026-06-01|SPECIES=WBNU      |TAIL=41   |TAIL=40.5 |41 to 57 mm
      tail.species     |ASKS|TAIL  |2026-06-01|SPECIES=WBNU      |TAIL=57   |TAIL=57.5 |41 to 57 mm
      tarsus.species   |ASKS|TARSUS|2026-06-01|SPECIES=WBNU      |TARSUS=15.7|TARSUS=15.6|15.7 to 21.3 mm
      tarsus.species   |ASKS|TARSUS|2026-06-01|SPECIES=WBNU      |TARSUS=21.3|TARSUS=21.4|15.7 to 21.3 mm
      culmen.species   |ASKS|CULMEN|2026-06-01|SPECIES=WBNU      |CULMEN=11.4|CULMEN=11.3|11.4 to 20.1 mm
      culmen.species   |ASKS|CULMEN|2026-06-01|SPECIES=WBNU      |CULMEN=20.1|CULMEN=20.2|11.4 to 20.1 mm
      mass.species     |ASKS|MASS  |2026-06-01|SPECIES=WBNU      |MASS=15.8 |MASS=15.7 |15.8 to 31.5 g
      mass.species     |ASKS|MASS  |2026-06-01|SPECIES=WBNU      |MASS=31.5 |MASS=31.6 |15.8 to 31.5 g
      wing.impossible  |ASKS|WING  |2026-06-01|SPECIES=WBNU      |WING=38.5 |WING=37   |is far outside 77 to 100 mm for White-breasted Nuthatch.
      wing.impossible  |ASKS|WING  |2026-06-01|SPECIES=WBNU      |WING=200  |WING=201  |is far outside 77 to 100 mm for White-breasted Nuthatch.
      tail.impossible  |ASKS|TAIL  |2026-06-01|SPECIES=WBNU      |TAIL=20.5 |TAIL=20   |another field; as Tarsus
      tarsus.impossible|ASKS|TARSUS|2026-06-01|SPECIES=WBNU      |TARSUS=42.6|TARSUS=43|another field; as Tail
      culmen.impossible|ASKS|CULMEN|2026-06-01|SPECIES=WBNU      |CULMEN=40.2|CULMEN=43|another field; as Tail
      mass.impossible  |ASKS|MASS  |2026-06-01|SPECIES=WBNU      |MASS=63   |MASS=77   |another field; as Wing chord
      wing.station     |ASKS|WING  |2026-06-01|SPECIES=WBNU SEX=M|WING=95   |WING=95.5 |89.0 to 95.0 mm (30 birds)
      wing.station     |ASKS|WING  |2026-06-01|SPECIES=WBNU WING=88.5|SEX=F |SEX=M     |89.0 to 95.0 mm (30 birds)
      tail.station     |ASKS|TAIL  |2026-06-01|SPECIES=WBNU SEX=M|TAIL=43   |TAIL=42.5 |43.0 to 51.0 mm (30 birds)
      tarsus.station   |ASKS|TARSUS|2026-06-01|SPECIES=WBNU SEX=M|TARSUS=19.6|TARSUS=19.7|18.4 to 19.6 mm (30 birds)
      culmen.station   |ASKS|CULMEN|2026-06-01|SPECIES=WBNU SEX=M|CULMEN=14.4|CULMEN=14.3|14.4 to 15.6 mm (30 birds)
      mass.station     |ASKS|MASS  |2026-06-01|SPECIES=WBNU SEX=M|MASS=25.3 |MASS=25.4 |18.7 to 25.3 g (30 birds)
      mass.wing        |ASKS|MASS  |2026-06-01|SPECIES=WBNU WING=78|MASS=28.7|MASS=29.2|is much for a wing of 78 mm: measure one of them again
      mass.wing        |ASKS|MASS  |2026-06-01|SPECIES=WBNU WING=100|MASS=20 |MASS=19  |is little for a wing of 100 mm: measure one of them again
      tail.wing        |ASKS|TAIL  |2026-06-01|SPECIES=WBNU WING=100|TAIL=45 |TAIL=43  |is short for a wing of 100 mm: measure one of them again
      tail.wing        |ASKS|TAIL  |2026-06-01|SPECIES=WBNU WING=78|TAIL=53  |TAIL=54  |is long for a wing of 78 mm: measure one of them again
      """;

  private RuleEdges() {}

  /** A bird as a table gives it: the record, and the field that was filled last. */
  record Bird(CaptureRecord record, FieldId filled) {}

  /** A row of a table. */
  record Edge(
      String rule,
      Finding.Severity severity,
      FieldId about,
      Bird passes,
      Bird fails,
      String fit,
      String row) {

    @Override
    public String toString() {
      return row;
    }
  }

  /** All rows. */
  static List<Edge> all() {
    return Stream.of(FIELDS, AGES, SEXES, HOW, MEASURES)
        .flatMap(String::lines)
        .map(RuleEdges::edge)
        .toList();
  }

  private static Edge edge(String row) {
    String[] cells = Arrays.stream(row.split("\\|")).map(String::strip).toArray(String[]::new);
    return new Edge(
        cells[0],
        Finding.Severity.valueOf(cells[1]),
        FieldId.valueOf(cells[2]),
        bird(cells[3], cells[4] + " " + cells[5]),
        bird(cells[3], cells[4] + " " + cells[6]),
        cells[7],
        row.replaceAll(" +", " "));
  }

  /** A bird caught on a day, with fields as {@code SPECIES=WBNU WING=92 HOW_AGED=SK+PL}. */
  static Bird bird(String day, String fields) {
    CaptureRecord record = new CaptureRecord(7, noon(day), "Fenwick Marsh", "QX", Map.of());
    FieldId filled = FieldId.SPECIES;
    for (String field : fields.strip().split(" +")) {
      String[] parts = field.split("=");
      if (parts[0].equals("DAY")) {
        record = new CaptureRecord(7, noon(parts[1]), "Fenwick Marsh", "QX", record.entries());
      } else {
        filled = FieldId.valueOf(parts[0]);
        record = record.with(filled, entry(filled, parts[1]));
      }
    }
    return new Bird(record, filled);
  }

  private static Instant noon(String day) {
    return LocalDate.parse(day).atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC);
  }

  private static Entry entry(FieldId field, String text) {
    return new Entry(
        value(field, text), new Provenance(Provenance.Way.SAID, ""), Instant.EPOCH, List.of());
  }

  private static FieldValue value(FieldId field, String text) {
    FieldKind kind = Fenwick.form().spec(field).kind();
    if (kind instanceof FieldKind.Measured measured) {
      return new FieldValue.Measure(new BigDecimal(text), measured.unit());
    }
    if (kind instanceof FieldKind.CodedMany) {
      return new FieldValue.Codes(List.of(text.split("\\+")));
    }
    if (kind instanceof FieldKind.Note) {
      return new FieldValue.Note(text, Optional.empty());
    }
    return kind instanceof FieldKind.Band
        ? BandNumber.parse(text).orElseThrow()
        : new FieldValue.Code(text);
  }

  /** Thirty male nuthatches, all alike, and a bird with a band. */
  static Known known() {
    StationSample sample = StationSample.empty();
    for (PastCapture capture :
        Collections.nCopies(
            RobustRange.FEWEST,
            past("2025-06-01", "SPECIES=WBNU SEX=M WING=92 TAIL=47 TARSUS=19 CULMEN=15 MASS=22"))) {
      sample = sample.with(capture);
    }
    Captures captures =
        Captures.of(List.of(past("2025-06-01", "BAND=2841-55601 AGE=HY")), Fenwick.ZONE);
    return new Known(BandLedger.empty(), captures, sample);
  }

  /** A saved capture. */
  static PastCapture past(String day, String fields) {
    CaptureRecord record = bird(day, fields).record();
    return PastCapture.of(
        new CaptureRecord(1, record.capturedAt(), record.place(), "QX", record.entries()));
  }
}
