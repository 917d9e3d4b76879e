package org.calamus.core.rule;

/** What became of a band; a band has one fate at most, and none while it waits on its string. */
public enum BandFate {
  /** It is on a bird. */
  USED("already on a bird", "already used"),
  /** It is lost. One that is found again must not be used: Bird Banding Laboratory, lost bands. */
  LOST("reported lost", "reported lost"),
  /** It was spoiled, or taken off and destroyed. */
  DESTROYED("reported destroyed", "reported destroyed");

  private final String shown;
  private final String spoken;

  BandFate(String shown, String spoken) {
    this.shown = shown;
    this.spoken = spoken;
  }

  /** As shown behind "is": {@code already on a bird}. */
  public String shown() {
    return shown;
  }

  /** As said behind "is": {@code already used}. */
  public String spoken() {
    return spoken;
  }
}
