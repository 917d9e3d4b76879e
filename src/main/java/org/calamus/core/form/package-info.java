/** What is asked and in which order, and the code tables. Depends on core.record. */
package org.calamus.core.form;
