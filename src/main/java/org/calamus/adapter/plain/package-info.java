/** The screen as lines of text, for pipes and logs. May use port and core. */
package org.calamus.adapter.plain;
