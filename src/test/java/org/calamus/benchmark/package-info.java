/**
 * Measures what the documentation claims: how well the console's own grammars are recognised, and
 * how quick, small and safe the finished jar is. Started by hand or by the Maven profile {@code
 * benchmark}; not part of the tests.
 */
package org.calamus.benchmark;
