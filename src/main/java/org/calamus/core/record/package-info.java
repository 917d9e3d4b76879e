/** What is captured: records, fields, values, readings. Depends on nothing but the JDK. */
package org.calamus.core.record;
