package org.calamus.acoustic;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Builds a model for the recogniser from acoustic tables, a dictionary and a list of words.
 *
 * <pre>{@code
 * List<WordToBuild> words = List.of(
 *     WordToBuild.chained("nine", "number", "number.words:12"),
 *     new WordToBuild("vireo", List.of("V IH R IY OW"), Optional.empty(), "species.words:40"));
 * ModelFiles model = ModelBuilder.build(tables, dictionary, words, Settings.standard());
 * model.files().get("am/final.mdl");
 * }</pre>
 */
public final class ModelBuilder {

  /** Changes whenever the same input would give other bytes, so that old models are not reused. */
  public static final int VERSION = 2;

  private ModelBuilder() {}

  /**
   * Builds the model; equal input gives equal bytes.
   *
   * @param tables the acoustic tables
   * @param dictionary lines of a word, a blank and its phones; "word(2)" is a further way to say it
   * @param words the words the model shall know; "[unk]", for all others, is always known
   * @param settings the balance of sounds and words
   * @return the files of the model's folder
   * @throws UnusableWordsException naming each word that has no pronunciation or cannot be a word
   * @throws AcousticException naming the table that is damaged
   */
  public static ModelFiles build(
      AcousticTables tables, String dictionary, List<WordToBuild> words, Settings settings) {
    PhoneTable phones = new PhoneTable(tables.mdef());
    FeatureParameters features = FeatureParameters.read(tables.featParams());
    TransitionMatrices transitions = new TransitionMatrices(tables.transitionMatrices());
    Lexicon lexicon = Lexicon.of(words, dictionary, phones);
    KaldiPhones numbers = new KaldiPhones(phones);
    List<String> names = names(lexicon);
    WordGraph graph =
        new GraphBuilder(phones, transitions, numbers, settings)
            .build(lexicon, Lexicon.MARKS.size(), Lexicon.MARKS.indexOf(Lexicon.UNKNOWN));
    PdfLayout layout = new PdfLayout(graph, phones);
    TransitionIds ids = new TransitionIds(graph, layout);

    SortedMap<String, byte[]> files = new TreeMap<>();
    files.put("am/final.mdl", acousticModel(tables, phones, numbers, layout, ids));
    files.put("am/global_cmvn.stats", text(ConfigFiles.normalisation(settings)));
    files.put("conf/mfcc.conf", text(ConfigFiles.frontEnd(features, settings)));
    files.put("conf/model.conf", text(ConfigFiles.search(settings)));
    files.put("graph/HCLr.fst", soundGraph(graph, ids));
    files.put("graph/Gr.fst", anyWords(names));
    files.put("graph/disambig_tid.int", new byte[0]);
    files.put("graph/words.txt", text(ConfigFiles.words(names)));
    files.put("graph/phones/word_boundary.int", text(ConfigFiles.wordBoundaries(numbers)));
    return new ModelFiles(files);
  }

  private static List<String> names(Lexicon lexicon) {
    List<String> names = new ArrayList<>(Lexicon.MARKS);
    lexicon.entries().forEach(entry -> names.add(entry.word()));
    return names;
  }

  private static byte[] acousticModel(
      AcousticTables tables,
      PhoneTable phones,
      KaldiPhones numbers,
      PdfLayout layout,
      TransitionIds ids) {
    int books = phones.basePhoneCount();
    KaldiBytes out = new KaldiBytes().binaryMark();
    TransitionModel.write(out, numbers.count(), ids);
    new NetworkWriter(out, layout)
        .write(
            new Gaussians("means", tables.means(), books),
            new Gaussians("variances", tables.variances(), books),
            new MixtureWeights(tables.sendump(), phones.senoneCount()));
    return out.toBytes();
  }

  private static byte[] soundGraph(WordGraph graph, TransitionIds ids) {
    FstWriter fst = new FstWriter();
    int state = 0;
    for (List<Arc> arcs : graph.byState()) {
      List<FstWriter.FstArc> out = new ArrayList<>(arcs.size());
      for (Arc arc : arcs) {
        out.add(new FstWriter.FstArc(ids.of(arc), arc.word(), (float) arc.cost(), arc.to()));
      }
      fst.add(out, graph.ends().get(state++));
    }
    return fst.bytes();
  }

  /** The grammar of a recogniser that is given none: any words in any order. */
  private static byte[] anyWords(List<String> names) {
    float cost = (float) Math.log(names.size());
    List<FstWriter.FstArc> arcs = new ArrayList<>();
    for (int word = Lexicon.MARKS.size(); word < names.size(); word++) {
      arcs.add(new FstWriter.FstArc(word, word, cost, 0));
    }
    FstWriter fst = new FstWriter();
    fst.add(arcs, true);
    return fst.bytes();
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
