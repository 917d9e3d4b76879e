/**
 * Figures over the saved records: counts and accounts in, no words. Depends on core.record,
 * core.form and core.rule.
 */
package org.calamus.core.summary;
