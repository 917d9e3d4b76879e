/** Keeps the records in an SQLite file. Depends on port, core and the SQLite driver. */
package org.calamus.adapter.sqlite;
