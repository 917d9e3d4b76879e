package org.calamus.boot;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.form.Form;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.FieldId;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The options of a replay. */
final class ReplayOptions {

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description =
          "The folder of a session, its list, one of its sounds, or any WAV recording (with"
              + " --field).")
  private List<Path> files = List.of();

  @Option(
      names = "--field",
      paramLabel = "NAME",
      description = "What is asked while a recording is heard, such as wing or how-aged.")
  private String field;

  @Option(
      names = "--kind",
      paramLabel = "NAME",
      defaultValue = "new",
      description = "The kind of capture while a recording is heard (default: new).")
  private String kind;

  List<Path> files() {
    return files;
  }

  /**
   * The field that is asked, where one is given.
   *
   * @throws Halt where the form has none of that name
   */
  Optional<FieldId> field(Form form) {
    if (field == null) {
      return Optional.empty();
    }
    Optional<FieldId> found = FieldId.ofKey(field).filter(form::has);
    if (found.isEmpty()) {
      String names =
          form.fields().stream().map(f -> f.id().key()).collect(Collectors.joining(", "));
      throw new Halt(
          ExitCode.WRONG_USE, "--field " + field + " is no field; there are " + names + ".", null);
    }
    return found;
  }

  /**
   * The kind of capture.
   *
   * @throws Halt where there is none of that name
   */
  CaptureKind kind() {
    return Arrays.stream(CaptureKind.values())
        .filter(k -> k.key().equals(kind))
        .findFirst()
        .orElseThrow(
            () ->
                new Halt(
                    ExitCode.WRONG_USE,
                    "--kind " + kind + " is no kind of capture, such as new or recapture.",
                    null));
  }
}
