package org.calamus.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_THROW_GENERIC_EXCEPTIONS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What may know what, and what each part may use of the JDK and of libraries. */
@AnalyzeClasses(packages = "org.calamus", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String ROOT = "org.calamus";
  private static final String CORE = ROOT + ".core";

  /** Calls that bring the time, chance, the environment or the computer's habits in. */
  private static final Map<String, Set<String>> AMBIENT =
      Map.ofEntries(
          Map.entry(
              "java.lang.System", Set.of("currentTimeMillis", "nanoTime", "getenv", "getProperty")),
          Map.entry("java.time.Instant", Set.of("now")),
          Map.entry("java.time.LocalDate", Set.of("now")),
          Map.entry("java.time.LocalTime", Set.of("now")),
          Map.entry("java.time.LocalDateTime", Set.of("now")),
          Map.entry("java.time.OffsetDateTime", Set.of("now")),
          Map.entry("java.time.ZonedDateTime", Set.of("now")),
          Map.entry("java.time.Year", Set.of("now")),
          Map.entry(
              "java.time.Clock",
              Set.of("systemUTC", "systemDefaultZone", "system", "tick", "tickSeconds")),
          Map.entry("java.time.ZoneId", Set.of("systemDefault")),
          Map.entry("java.util.Locale", Set.of("getDefault")),
          Map.entry("java.util.TimeZone", Set.of("getDefault")),
          Map.entry("java.util.UUID", Set.of("randomUUID")),
          Map.entry("java.util.Date", Set.of("<init>")),
          Map.entry("java.lang.Math", Set.of("random")));

  @ArchTest
  static final ArchRule layers =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("core")
          .definedBy(CORE + "..")
          .optionalLayer("acoustic")
          .definedBy(ROOT + ".acoustic..")
          .layer("port")
          .definedBy(ROOT + ".port..")
          .layer("engine")
          .definedBy(ROOT + ".engine..")
          .layer("adapter")
          .definedBy(ROOT + ".adapter..")
          .layer("boot")
          .definedBy(ROOT, ROOT + ".boot..")
          .whereLayer("core")
          .mayNotAccessAnyLayer()
          .whereLayer("acoustic")
          .mayNotAccessAnyLayer()
          .whereLayer("port")
          .mayOnlyAccessLayers("core")
          .whereLayer("engine")
          .mayOnlyAccessLayers("port", "core")
          .whereLayer("adapter")
          .mayOnlyAccessLayers("port", "core", "acoustic")
          .whereLayer("boot")
          .mayNotBeAccessedByAnyLayer();

  @ArchTest
  static final ArchRule core_has_an_inner_order =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("record")
          .definedBy(CORE + ".record..")
          .layer("form")
          .definedBy(CORE + ".form..")
          .layer("rule")
          .definedBy(CORE + ".rule..")
          .layer("summary")
          .definedBy(CORE + ".summary..")
          .layer("instrument")
          .definedBy(CORE + ".instrument..")
          .layer("speech")
          .definedBy(CORE + ".speech..")
          .layer("readback")
          .definedBy(CORE + ".readback..")
          .layer("dialogue")
          .definedBy(CORE + ".dialogue..")
          .layer("effort")
          .definedBy(CORE + ".effort..")
          .whereLayer("record")
          .mayNotAccessAnyLayer()
          .whereLayer("effort")
          .mayOnlyAccessLayers("record")
          .whereLayer("form")
          .mayOnlyAccessLayers("record")
          .whereLayer("rule")
          .mayOnlyAccessLayers("record", "form")
          .whereLayer("summary")
          .mayOnlyAccessLayers("record", "form", "rule")
          .whereLayer("instrument")
          .mayOnlyAccessLayers("record")
          .whereLayer("speech")
          .mayOnlyAccessLayers("record", "form")
          .whereLayer("readback")
          .mayOnlyAccessLayers("record", "form", "rule")
          .whereLayer("dialogue")
          .mayNotBeAccessedByAnyLayer();

  @ArchTest
  static final ArchRule core_uses_only_pure_java =
      classes()
          .that()
          .resideInAPackage(CORE + "..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              CORE + "..",
              "java.lang",
              "java.lang.annotation",
              "java.lang.invoke",
              "java.lang.runtime",
              "java.util",
              "java.util.function",
              "java.util.stream",
              "java.util.regex",
              "java.time..",
              "java.math",
              "java.text");

  @ArchTest
  static final ArchRule acoustic_only_converts =
      classes()
          .that()
          .resideInAPackage(ROOT + ".acoustic..")
          .should()
          .onlyDependOnClassesThat(
              resideInAnyPackage(
                      ROOT + ".acoustic..",
                      "java.lang..",
                      "java.util",
                      "java.util.function",
                      "java.util.stream",
                      "java.util.regex",
                      "java.util.zip",
                      "java.math",
                      "java.time",
                      "java.nio..",
                      "java.io")
                  .and(not(nameMatching("java\\.io\\.(File|RandomAccessFile|Console).*"))))
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule acoustic_only_for_the_recogniser =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              ROOT, ROOT + ".acoustic..", ROOT + ".adapter.vosk..", ROOT + ".boot..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage(ROOT + ".acoustic..");

  @ArchTest
  static final ArchRule core_reads_no_clock_and_no_environment =
      noClasses()
          .that()
          .resideInAnyPackage(CORE + "..", ROOT + ".engine..", ROOT + ".acoustic..")
          .should()
          .callCodeUnitWhere(isAmbient())
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Thread.class)
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(java.util.Random.class)
          .because("time, chance and environment come in as events or constructor arguments");

  @ArchTest
  static final ArchRule core_fields_are_final =
      fields().that().areDeclaredInClassesThat().resideInAPackage(CORE + "..").should().beFinal();

  @ArchTest
  static final ArchRule dialogue_families_are_sealed =
      classes()
          .that()
          .resideInAPackage(CORE + "..")
          .and()
          .areInterfaces()
          .and()
          .areNotAnnotations()
          .and()
          .doNotHaveSimpleName("package-info")
          .should(
              new ArchCondition<JavaClass>("be sealed") {
                @Override
                public void check(JavaClass c, ConditionEvents events) {
                  events.add(
                      new SimpleConditionEvent(
                          c,
                          c.reflect().isSealed(),
                          c.getName() + " sealed=" + c.reflect().isSealed()));
                }
              });

  @ArchTest
  static final ArchRule measured_values_are_no_binary_fractions =
      noFields()
          .that()
          .areDeclaredInClassesThat()
          .resideInAPackage(CORE + ".record..")
          .should()
          .haveRawType(double.class)
          .orShould()
          .haveRawType(float.class)
          .orShould()
          .haveRawType(Double.class)
          .orShould()
          .haveRawType(Float.class)
          .because("a measured value keeps its digits as received");

  @ArchTest static final ArchRule vosk_only_here = only("org.vosk..", ".adapter.vosk..");
  @ArchTest static final ArchRule jna_only_here = only("com.sun.jna..", ".adapter.vosk..");

  @ArchTest
  static final ArchRule lanterna_only_here =
      only("com.googlecode.lanterna..", ".adapter.lanterna..");

  @ArchTest static final ArchRule serial_only_here = only("com.fazecast..", ".adapter.serial..");
  @ArchTest static final ArchRule toml_only_here = only("org.tomlj..", ".adapter.files..");

  @ArchTest
  static final ArchRule sound_only_here =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + ".adapter.microphone..", ROOT + ".adapter.speaker..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javax.sound..");

  @ArchTest
  static final ArchRule sql_only_here =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + ".adapter.sqlite..", ROOT + ".boot..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite..");

  @ArchTest
  static final ArchRule arguments_only_at_the_door =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT, ROOT + ".boot..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("picocli..");

  @ArchTest
  static final ArchRule threads_only_outside_the_core =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + ".adapter..", ROOT + ".engine..", ROOT + ".boot..", ROOT)
          .should()
          .dependOnClassesThat()
          .resideInAPackage("java.util.concurrent..");

  @ArchTest
  static final ArchRule adapters_do_not_know_each_other =
      slices().matching(ROOT + ".adapter.(*)..").should().notDependOnEachOther();

  @ArchTest
  static final ArchRule no_cycles_in_core =
      slices().matching(CORE + ".(*)..").should().beFreeOfCycles();

  /** The recogniser's model is made ready before there are ears, so boot must name it. */
  @ArchTest
  static final ArchRule public_adapter_classes_serve_a_port =
      classes()
          .that()
          .resideInAPackage(ROOT + ".adapter..")
          .and()
          .arePublic()
          .and()
          .areTopLevelClasses()
          .and(not(assignableTo(Throwable.class)))
          .and(
              not(
                  resideInAPackage(ROOT + ".adapter.vosk..")
                      .and(nameMatching(".*\\.Model[^.]*"))
                      .as("models of the recogniser")))
          .should()
          .beAssignableTo(resideInAPackage(ROOT + ".port.."));

  @ArchTest
  static final ArchRule console_is_the_screens_alone =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT, ROOT + ".boot..")
          .should(ACCESS_STANDARD_STREAMS);

  @ArchTest
  static final ArchRule no_generic_exceptions = NO_CLASSES_SHOULD_THROW_GENERIC_EXCEPTIONS;

  @ArchTest
  static final ArchRule no_default_locale =
      noClasses()
          .should()
          .callMethod(String.class, "toLowerCase")
          .orShould()
          .callMethod(String.class, "toUpperCase")
          .orShould()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(String.class, "formatted", Object[].class)
          .orShould()
          .callMethod(java.util.Locale.class, "getDefault");

  @ArchTest
  static void every_package_says_what_it_is_for(JavaClasses all) {
    Set<String> packages =
        all.stream().map(JavaClass::getPackageName).collect(Collectors.toCollection(TreeSet::new));
    assertThat(packages)
        .allSatisfy(
            p -> assertThat(java.nio.file.Path.of(source(p))).as("package-info of " + p).exists());
  }

  private static String source(String packageName) {
    return "src/main/java/" + packageName.replace('.', '/') + "/package-info.java";
  }

  /** A slip in the packages above would let every rule pass over nothing. */
  @ArchTest
  static void there_is_something_to_look_at(JavaClasses all) {
    assertThat(all).hasSizeGreaterThan(60);
  }

  private static DescribedPredicate<JavaCall<?>> isAmbient() {
    return describe(
        "brings in the time, chance or the environment",
        call ->
            AMBIENT
                .getOrDefault(call.getTargetOwner().getName(), Set.of())
                .contains(call.getName()));
  }

  private static ArchRule only(String library, String home) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(ROOT + home)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library);
  }
}
