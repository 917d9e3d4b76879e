package org.calamus.core.effort;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * When each net was opened and closed. Immutable; an event whose time was corrected counts no more,
 * but is kept.
 *
 * <pre>{@code
 * NetLog log = NetLog.of(store.netEvents());
 * log.isOpen("5");
 * log.spans("5");     // oldest first
 * }</pre>
 */
public final class NetLog {

  private static final NetLog EMPTY = new NetLog(List.of());

  private final List<NetEvent> events;
  private final Map<String, List<NetEvent>> counting;

  private NetLog(List<NetEvent> events) {
    this.events = List.copyOf(events);
    Map<Long, NetEvent> byId = new LinkedHashMap<>();
    for (NetEvent event : events) {
      event.supersedes().ifPresent(byId::remove);
      byId.put(event.id(), event);
    }
    Map<String, List<NetEvent>> byNet = new LinkedHashMap<>();
    for (NetEvent event : byId.values()) {
      byNet.computeIfAbsent(event.net(), net -> new ArrayList<>()).add(event);
    }
    byNet
        .values()
        .forEach(
            list -> list.sort(Comparator.comparing(NetEvent::at).thenComparingLong(NetEvent::id)));
    this.counting = byNet;
  }

  /**
   * A time for which a net was open.
   *
   * @param from when it was opened (UTC)
   * @param to when it was closed (UTC); empty while it is open
   */
  public record Span(Instant from, Optional<Instant> to) {
    /** Checks the parts. */
    public Span {
      Objects.requireNonNull(from);
      Objects.requireNonNull(to);
    }
  }

  /** No net was ever opened. */
  public static NetLog empty() {
    return EMPTY;
  }

  /** The log of events, in the order in which they were entered. */
  public static NetLog of(Collection<NetEvent> entered) {
    return new NetLog(List.copyOf(entered));
  }

  /** The log with one more event. */
  public NetLog with(NetEvent event) {
    List<NetEvent> more = new ArrayList<>(events);
    more.add(event);
    return new NetLog(more);
  }

  /** The number of the next event. */
  public long nextId() {
    return events.stream().mapToLong(NetEvent::id).max().orElse(0) + 1;
  }

  /** Every event, in the order in which it was entered. */
  public List<NetEvent> events() {
    return events;
  }

  /** The nets that were ever opened, in the order of their first opening. */
  public List<String> nets() {
    return List.copyOf(counting.keySet());
  }

  /** The nets that are open now. */
  public List<String> open() {
    return counting.keySet().stream().filter(this::isOpen).toList();
  }

  /** Whether a net is open now. */
  public boolean isOpen(String net) {
    return last(net).filter(e -> e.what() == NetEvent.What.OPENED).isPresent();
  }

  /** What was done last to a net; empty where it was never opened. */
  public Optional<NetEvent> last(String net) {
    List<NetEvent> all = counting.getOrDefault(net, List.of());
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  /** What was done to a net before its last event; empty where that is its first. */
  public Optional<NetEvent> beforeLast(String net) {
    List<NetEvent> all = counting.getOrDefault(net, List.of());
    return all.size() < 2 ? Optional.empty() : Optional.of(all.get(all.size() - 2));
  }

  /** The times for which a net was open, oldest first. */
  public List<Span> spans(String net) {
    List<Span> spans = new ArrayList<>();
    Optional<Instant> from = Optional.empty();
    for (NetEvent event : counting.getOrDefault(net, List.of())) {
      if (event.what() == NetEvent.What.OPENED) {
        from = from.or(() -> Optional.of(event.at()));
      } else if (from.isPresent()) {
        spans.add(new Span(from.get(), Optional.of(event.at())));
        from = Optional.empty();
      }
    }
    from.ifPresent(f -> spans.add(new Span(f, Optional.empty())));
    return spans;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NetLog log && events.equals(log.events);
  }

  @Override
  public int hashCode() {
    return events.hashCode();
  }
}
