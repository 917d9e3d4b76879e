package org.calamus.acoustic;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.calamus.support.Outside;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The graphs as the tools of the library that defines their format see them. */
class FstToolsTest {

  @TempDir private Path folder;
  private ModelFiles model;

  @BeforeEach
  void build() {
    model =
        ModelBuilder.build(
            SampleTables.tables(),
            SampleTables.dictionary(),
            SampleTables.words(),
            Settings.standard());
  }

  private List<String> run(String tool, String graph) throws IOException {
    Path program = Outside.program(tool);
    Path file = Files.write(folder.resolve("graph.fst"), model.files().get(graph));
    Process process =
        new ProcessBuilder(program.toString(), file.toString()).redirectErrorStream(true).start();
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
        .lines()
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"graph/HCLr.fst", "graph/Gr.fst"})
  void infoFindsASoundConnectedGraph(String graph) throws IOException {
    FstFile file = FstFile.read(model.files().get(graph));
    long arcs = file.arcs().stream().mapToLong(List::size).sum();
    int states = file.arcs().size();
    assertThat(run("fstinfo", graph).stream().map(line -> line.replaceAll("\\s+", " ")))
        .contains(
            "fst type vector",
            "arc type standard",
            "# of states " + states,
            "# of arcs " + arcs,
            "# of accessible states " + states,
            "# of coaccessible states " + states,
            "output label sorted y",
            "error n");
  }

  @Test
  void printedArcsAreTheArcs() throws IOException {
    FstFile file = FstFile.read(model.files().get("graph/HCLr.fst"));
    List<String> printed = run("fstprint", "graph/HCLr.fst");
    long ends = file.ends().stream().filter(end -> end == 0f).count();
    long arcs = file.arcs().stream().mapToLong(List::size).sum();
    assertThat(printed).hasSize((int) (arcs + ends));
    FstFile.FstArc first = file.arcs().get(0).get(0);
    assertThat(printed.get(0))
        .startsWith("0\t" + first.to() + "\t" + first.input() + "\t" + first.output() + "\t");
  }
}
