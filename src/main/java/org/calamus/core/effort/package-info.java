/** When the nets were open, and what that comes to in net-hours. Depends on record only. */
package org.calamus.core.effort;
