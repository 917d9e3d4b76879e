/**
 * The screen and the keys of a terminal window, through Lanterna. Lays out what the dialogue has
 * put into words and decides nothing. May use port and core.
 */
package org.calamus.adapter.lanterna;
