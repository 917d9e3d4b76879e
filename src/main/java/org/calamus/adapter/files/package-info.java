/** Reads the files that users edit, and names every mistake in them. Depends on port and core. */
package org.calamus.adapter.files;
