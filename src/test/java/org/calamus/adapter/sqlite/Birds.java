package org.calamus.adapter.sqlite;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Unit;

/** Invented records for the tests of the store. */
final class Birds {

  static final Instant DAWN = Instant.parse("2026-05-03T04:10:00.250Z");

  private Birds() {}

  static CaptureRecord empty(long id) {
    return new CaptureRecord(id, DAWN.plusSeconds(60 * id), "Fenwick Marsh", "QX", Map.of());
  }

  /** A record with its band, as the first value of each bird. */
  static CaptureRecord banded(long id) {
    return empty(id).with(FieldId.BAND, band(id));
  }

  static Entry band(long id) {
    BandNumber first = new BandNumber("2841", "55601");
    return keyed(first.endingIn(Long.toString(1000 + id)));
  }

  static Entry code(String code) {
    return said(new FieldValue.Code(code), "code " + code);
  }

  static Entry wing(String millimetres) {
    return said(
        new FieldValue.Measure(new BigDecimal(millimetres), Unit.MILLIMETRE),
        "wing " + millimetres);
  }

  static Entry mass(String grams) {
    return new Entry(
        new FieldValue.Measure(new BigDecimal(grams), Unit.GRAM),
        new Provenance(Provenance.Way.MEASURED, "balance: S S " + grams + " g"),
        later(40),
        List.of());
  }

  static Entry keyed(FieldValue value) {
    return new Entry(
        value, new Provenance(Provenance.Way.KEYED, value.text()), later(5), List.of());
  }

  static Entry said(FieldValue value, String words) {
    return new Entry(value, new Provenance(Provenance.Way.SAID, words), later(12), List.of());
  }

  static Instant later(long seconds) {
    return DAWN.plusSeconds(seconds);
  }
}
