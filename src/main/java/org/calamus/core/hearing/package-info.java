/**
 * What the microphone check asks and how it judges: levels and answers in, a verdict out. May
 * depend on speech, form and record.
 */
package org.calamus.core.hearing;
