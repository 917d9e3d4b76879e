package org.calamus.port;

import java.util.function.Function;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.Form;

/** Reads the station's form: which fields it records, and in which order. */
@FunctionalInterface
public interface Forms {
  /**
   * The form.
   *
   * @param tables gives the code table of a field by the field's key, such as {@code how-aged}
   * @throws SettingsException naming every file and line that cannot be used
   */
  Form read(Function<String, CodeTable> tables);
}
