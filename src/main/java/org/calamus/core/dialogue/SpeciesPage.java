package org.calamus.core.dialogue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.calamus.core.form.Species;
import org.calamus.core.summary.HourCount;
import org.calamus.core.summary.SpeciesCount;
import org.calamus.core.summary.Tally;

/** How many birds of which species, today and this season, and in which hours. */
final class SpeciesPage {

  private static final int SPECIES_CELLS = 30;
  private static final int BAR_CELLS = 15;
  private static final int HOUR_BAR_CELLS = 46;

  private final Setup setup;

  SpeciesPage(Setup setup) {
    this.setup = setup;
  }

  PageContent of(State state) {
    LocalDate day = PageContents.today(setup, state);
    ZoneId zone = setup.station().zone();
    List<SpeciesCount> counts = SpeciesCount.of(PageContents.known(state).captures(), day, zone);
    String title = PageName.SPECIES.title() + ", " + day;
    if (counts.isEmpty()) {
      return new PageContent(
          title, List.of(PageRow.title("No bird was saved since the beginning of the year.")));
    }
    List<PageRow> rows = new ArrayList<>(species(counts));
    rows.addAll(hours(HourCount.of(PageContents.known(state).captures().onDay(day, zone), zone)));
    return new PageContent(title, rows);
  }

  private List<PageRow> species(List<SpeciesCount> counts) {
    int most = counts.stream().mapToInt(c -> c.day().total()).max().orElse(0);
    int perLetter = PageText.perLetter(most, BAR_CELLS);
    List<PageRow> rows = new ArrayList<>();
    rows.add(PageRow.title("Birds by species     " + PageText.legend(perLetter)));
    rows.add(
        PageRow.head(
            PageText.padded("", SPECIES_CELLS)
                + "today  N   R   O "
                + PageText.padded("", BAR_CELLS + 1)
                + "year"));
    for (SpeciesCount count : counts) {
      String name = count.species().map(this::name).orElse("species not given");
      rows.add(
          PageRow.chosen(
              "",
              line(name, count, PageText.bar(count.day(), perLetter)),
              year(count.season()),
              new PageRow.Subject.OfSpecies(count.species())));
    }
    SpeciesCount all = SpeciesCount.all(counts);
    rows.add(
        new PageRow(
            new Page.Row(Page.Look.HEAD, "", "", line("All", all, ""), year(all.season())),
            java.util.Optional.empty()));
    return rows;
  }

  private String name(String code) {
    String name = setup.rules().reference().species().byCode(code).map(Species::name).orElse("");
    return name.isEmpty() ? code : code + " " + name;
  }

  private static String line(String name, SpeciesCount count, String bar) {
    Tally day = count.day();
    return PageText.padded(name, SPECIES_CELLS)
        + PageText.right(day.total(), 5)
        + PageText.right(day.fresh(), 3)
        + PageText.right(day.recaptured(), 4)
        + PageText.right(day.others(), 4)
        + "  "
        + PageText.padded(bar, BAR_CELLS + 1)
        + PageText.right(count.season().total(), 5);
  }

  private static String year(Tally season) {
    return "year: "
        + season.fresh()
        + " new, "
        + season.recaptured()
        + " recaptured, "
        + season.others()
        + " other";
  }

  private static List<PageRow> hours(List<HourCount> hours) {
    if (hours.isEmpty()) {
      return List.of(PageRow.title("No bird today."));
    }
    int most = hours.stream().mapToInt(h -> h.birds().total()).max().orElse(0);
    int perLetter = PageText.perLetter(most, HOUR_BAR_CELLS);
    List<PageRow> rows = new ArrayList<>();
    rows.add(PageRow.title("Birds of today by hour     " + PageText.legend(perLetter)));
    for (HourCount hour : hours) {
      String from = PageText.right(hour.hour(), 2).replace(' ', '0');
      rows.add(
          PageRow.text(
              from
                  + ":00 "
                  + PageText.right(hour.birds().total(), 4)
                  + "  "
                  + PageText.bar(hour.birds(), perLetter)));
    }
    return rows;
  }
}
