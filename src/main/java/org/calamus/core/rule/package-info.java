/** The validation rules, the same for every way in. Depends on core.record and core.form. */
package org.calamus.core.rule;
