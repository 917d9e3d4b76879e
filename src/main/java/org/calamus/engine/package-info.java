/**
 * The one loop: takes events, steps the dialogue, performs the effects. Depends on port and core.
 */
package org.calamus.engine;
