/**
 * Bytes to readings, and readings to settled values. Depends on core.record.
 *
 * <p>Bytes go through {@link org.calamus.core.instrument.LineSplitter} (bytes to whole lines) and
 * {@link org.calamus.core.instrument.LineReader} (a line to a reading), both held by {@link
 * org.calamus.core.instrument.InstrumentDecoder}; what they need to know of an instrument is a
 * {@link org.calamus.core.instrument.DeviceDescription}. The readings then go through {@link
 * org.calamus.core.instrument.Weighing}, which says when one is to be believed.
 */
package org.calamus.core.instrument;
