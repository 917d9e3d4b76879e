package org.calamus.core.dialogue;

import java.util.List;

/**
 * What a page says.
 *
 * @param title its title
 * @param rows its rows
 */
record PageContent(String title, List<PageRow> rows) {

  PageContent {
    rows = List.copyOf(rows);
  }
}
