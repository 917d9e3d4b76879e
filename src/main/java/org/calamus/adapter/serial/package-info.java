/** Instruments on serial ports, the only user of the serial library. Depends on port and core. */
package org.calamus.adapter.serial;
