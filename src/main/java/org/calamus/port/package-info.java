/** What the engine needs from the world. Depends on core. */
package org.calamus.port;
