/**
 * Words to meaning: vocabularies, spoken numbers, grammars. Depends on core.record and core.form.
 */
package org.calamus.core.speech;
