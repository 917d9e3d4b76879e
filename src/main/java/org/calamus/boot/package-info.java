/** Puts everything together. The only package that names every adapter. */
package org.calamus.boot;
