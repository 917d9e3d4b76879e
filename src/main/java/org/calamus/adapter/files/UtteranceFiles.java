package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Supplier;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.UtteranceKeeper;

/**
 * Keeps utterances in the folder {@code utterances} of the data folder, a folder for each session.
 *
 * <p>Where anything fails, or the disk is nearly full, it says so once and keeps no more in this
 * session: the room that is left belongs to the records.
 */
public final class UtteranceFiles implements UtteranceKeeper {

  private static final String FOLDER_NAME = "utterances";
  private static final long LEAST_FREE = 100_000_000;
  private static final Duration CLOSING_LIMIT = Duration.ofSeconds(2);

  /** Of half a megabyte at most, each; a disk so slow is of no use. */
  private static final int MOST_WAITING = 50;

  private final BlockingQueue<Runnable> tasks = new LinkedBlockingQueue<>(MOST_WAITING);
  private final Map<Event.Heard, Sound> waiting = new IdentityHashMap<>();
  private final Path folder;
  private final long most;
  private final long leastFree;
  private final Clock clock;
  private final Thread thread = new Thread(this::run, "utterances");
  private volatile boolean hasEnded;
  private volatile EventSink sink = event -> {};
  private Optional<SessionFolder> session = Optional.empty();
  private Optional<KeptSpace> space = Optional.empty();

  private record Sound(String grammar, short[] samples) {}

  /**
   * A keeper for a data folder that this process holds alone.
   *
   * @param data the data folder; nothing is made in it before the start
   * @param megabytes how much is kept in all, in millions of bytes
   * @param clock names the session, and stamps the events
   */
  public UtteranceFiles(Path data, int megabytes, Clock clock) {
    this(data, megabytes * 1_000_000L, LEAST_FREE, clock);
  }

  UtteranceFiles(Path data, long mostBytes, long leastFree, Clock clock) {
    this.folder = data.resolve(FOLDER_NAME);
    this.most = mostBytes;
    this.leastFree = leastFree;
    this.clock = clock;
    thread.setDaemon(true);
  }

  @Override
  public void start(EventSink events) {
    sink = events;
    thread.start();
  }

  @Override
  public void heard(Event.Heard event, Grammar grammar, short[] sound) {
    add(() -> waiting.put(event, new Sound(grammar.name(), sound)));
  }

  @Override
  public void became(Event.Heard event, Supplier<Account> account) {
    add(() -> Optional.ofNullable(waiting.remove(event)).ifPresent(s -> keep(event, s, account)));
  }

  /** What cannot be taken at once is left out: nobody waits for the disk. */
  private void add(Runnable task) {
    if (!hasEnded && !tasks.offer(task)) {
      end("the disk that holds " + folder + " is too slow; choose another data folder.");
    }
  }

  @Override
  public void close() {
    if (!tasks.offer(() -> hasEnded = true)) {
      hasEnded = true;
    }
    try {
      // not by an interrupt, which would break off what is being written
      thread.join(CLOSING_LIMIT.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    begin();
    while (!hasEnded) {
      try {
        tasks.take().run();
      } catch (InterruptedException e) {
        hasEnded = true;
      }
    }
    tasks.clear();
    waiting.clear();
  }

  private void begin() {
    try {
      SessionFolder begun = SessionFolder.begin(folder, clock.now());
      session = Optional.of(begun);
      space = Optional.of(new KeptSpace(folder, begun.path(), most, leastFree));
      String name = FOLDER_NAME + "/" + begun.path().getFileName();
      sink.post(new Event.PartUp(clock.now(), Part.KEEPER, name));
    } catch (IOException e) {
      unwritable();
    }
  }

  private void keep(Event.Heard event, Sound sound, Supplier<Account> account) {
    long bytes = 2L * sound.samples().length;
    try {
      if (!space.orElseThrow().isDiskRoomy()) {
        end("the disk that holds " + folder + " is nearly full; free some space and start again.");
      } else if (!space.orElseThrow().makeRoom(bytes)) {
        end("this session fills " + folder + "; raise utterances-megabytes and start again.");
      } else {
        SessionFolder begun = session.orElseThrow();
        space.orElseThrow().took(begun.add(event, sound.grammar(), sound.samples(), account.get()));
      }
    } catch (IOException e) {
      unwritable();
    }
  }

  private void unwritable() {
    end(folder + " cannot be written to; look after the folder and start again.");
  }

  private void end(String why) {
    hasEnded = true;
    String sentence = "What is said is no longer kept, capture goes on: " + why;
    sink.post(new Event.PartDown(clock.now(), Part.KEEPER, sentence));
  }
}
