/** Bytes to readings, and readings to settled values. Depends on core.record. */
package org.calamus.core.instrument;
