/** Meaning to words: what is said and shown. Depends on core.record, core.form and core.rule. */
package org.calamus.core.readback;
