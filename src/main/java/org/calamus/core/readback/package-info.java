/**
 * Meaning to words and pictures: what is said and shown. Depends on core.record, core.form and
 * core.rule.
 */
package org.calamus.core.readback;
