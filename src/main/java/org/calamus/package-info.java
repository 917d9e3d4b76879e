/** The entry point. Depends on boot. */
package org.calamus;
