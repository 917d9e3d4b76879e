package org.calamus.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.concurrent.TimeUnit;

/** What holds for the tests as well. */
@AnalyzeClasses(packages = "org.calamus")
class TestsArchitectureTest {

  @ArchTest
  static final ArchRule nothing_waits_by_sleeping =
      noClasses()
          .should()
          .callMethod(Thread.class, "sleep", long.class)
          .orShould()
          .callMethod(Thread.class, "sleep", long.class, int.class)
          .orShould()
          .callMethod(TimeUnit.class, "sleep", long.class)
          .because("a test that sleeps is slow or fails by chance: wait for what must happen");

  @ArchTest
  static final ArchRule nothing_depends_on_the_computers_locale =
      noClasses()
          .should()
          .callMethod(String.class, "toLowerCase")
          .orShould()
          .callMethod(String.class, "toUpperCase")
          .orShould()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(String.class, "formatted", Object[].class);
}
