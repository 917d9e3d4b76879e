package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.calamus.port.RecordStore.StoreException;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteErrorCode;

/** Puts what went wrong with the files into one sentence: what, which file, what to do next. */
final class Failure {

  /**
   * With less than this a failed write is taken for a full disk; the driver reports some of those
   * as other errors. Four times the size of the index that SQLite keeps beside the log, 32 KiB
   * (SQLite, "WAL-mode File Format").
   */
  private static final long NEXT_TO_NOTHING_BYTES = 128 * 1024;

  private static final int PRIMARY_CODE = 0xff;

  private Failure() {}

  /**
   * The sentence for a failure of the database.
   *
   * @param what what is not done now, such as {@code Record 12 is not saved}
   * @param file the database
   * @param cause the failure
   */
  static StoreException ofDatabase(String what, Path file, SQLException cause) {
    String reason =
        cause.getCause() instanceof NativeLibraryNotFoundException
            ? "the database library cannot be loaded from "
                + NativeLibrary.folder()
                + "; that folder must be on a disk that lets programs run"
            : reason(file, cause.getErrorCode());
    return new StoreException(what + ": " + reason, cause);
  }

  /**
   * The sentence for a failure of a folder.
   *
   * @param folder the folder that was to be used
   * @param cause the failure
   */
  static StoreException ofFolder(Path folder, IOException cause) {
    return new StoreException(reason(folder, cause), cause);
  }

  /** The sentence for a folder into which the driver cannot unpack its library. */
  static StoreException ofNativeFolder(Path folder, IOException cause) {
    return new StoreException(
        "The database library cannot be unpacked into "
            + folder
            + "; make it a folder that may be written to, with 2 MB free",
        cause);
  }

  /** The sentence for a database whose content makes no sense. */
  static StoreException damaged(String what, Path file, Throwable cause) {
    return new StoreException(what + ": " + damage(file), cause);
  }

  /** The sentence for a file that is no longer where it was when it was opened. */
  static StoreException moved(String what, Path file) {
    return new StoreException(
        what
            + ": "
            + file
            + " was moved or deleted while it was in use; put it back where it was, or end Calamus"
            + " and look after the file first");
  }

  private static String reason(Path file, int code) {
    SQLiteErrorCode primary = SQLiteErrorCode.getErrorCode(code & PRIMARY_CODE);
    if (primary == SQLiteErrorCode.SQLITE_FULL || isOutOfSpace(primary, file)) {
      return "the disk is full; free some space and do it again (" + file + ")";
    }
    return switch (primary) {
      case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
          file + " may not be written to; make the file and its folder writable and do it again";
      case SQLITE_CORRUPT, SQLITE_NOTADB -> damage(file);
      case SQLITE_IOERR ->
          "the disk failed at " + file + "; check that the drive is connected and do it again";
      case SQLITE_BUSY, SQLITE_LOCKED ->
          "another program is using " + file + "; close that program and do it again";
      case SQLITE_CANTOPEN ->
          file + " cannot be opened; check that its folder is there and may be written to";
      default ->
          file
              + " could not be used (SQLite error "
              + code
              + "); run calamus check, then start again";
    };
  }

  private static boolean isOutOfSpace(SQLiteErrorCode primary, Path file) {
    return (primary == SQLiteErrorCode.SQLITE_IOERR || primary == SQLiteErrorCode.SQLITE_CANTOPEN)
        && isOutOfSpace(file.toAbsolutePath().getParent());
  }

  private static boolean isOutOfSpace(Path folder) {
    try {
      return Files.getFileStore(folder).getUsableSpace() < NEXT_TO_NOTHING_BYTES;
    } catch (IOException e) {
      // a folder that cannot even be asked is not known to be full
      return false;
    }
  }

  private static String damage(Path file) {
    return file
        + " is damaged or no database of Calamus and was left as it is; copy its whole folder to a"
        + " safe place, then start with another folder (--data)";
  }

  private static String reason(Path folder, IOException cause) {
    if (cause instanceof FileAlreadyExistsException || cause instanceof NotDirectoryException) {
      return folder + " is not a folder; give a folder with --data";
    }
    if (cause instanceof AccessDeniedException || isReadOnly(cause)) {
      return "Calamus may not write to the folder "
          + folder
          + "; make it writable or give another folder with --data";
    }
    if (isOutOfSpace(folder)) {
      return "The disk that holds the folder " + folder + " is full; free some space";
    }
    return "The folder "
        + folder
        + " cannot be used; check that the drive is connected or give another folder with --data";
  }

  private static boolean isReadOnly(IOException cause) {
    // the JDK has no type of its own for EROFS, only the text of the operating system
    return cause instanceof FileSystemException f
        && f.getReason() != null
        && f.getReason().contains("Read-only");
  }
}
