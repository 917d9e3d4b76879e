package org.calamus.adapter.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.core.instrument.PortSettings;
import org.calamus.core.instrument.PortSettings.Level;

/** A serial port of this machine, through the library. */
final class SerialWire implements Wire {

  /** How long a read waits; also the longest that closing has to wait for a read. */
  private static final int READ_MILLIS = 200;

  private static final int WRITE_MILLIS = 500;

  private final String path;
  private final PortSettings settings;
  private final byte[] buffer = new byte[1024];
  private Optional<SerialPort> port = Optional.empty();

  SerialWire(String path, PortSettings settings) {
    this.path = path;
    this.settings = settings;
  }

  @Override
  public Optional<String> open() {
    // the library would take the last part of an absent path for a port of that name under /dev
    if (path.startsWith("/") && !Files.exists(Path.of(path))) {
      return Optional.of(PortFault.MISSING.sentence(path));
    }
    try {
      SerialPort found = SerialPort.getCommPort(path);
      configure(found);
      if (!found.openPort()) {
        PortFault fault = PortFault.of(found.getLastErrorCode(), System.getProperty("os.name", ""));
        return Optional.of(fault.sentence(path));
      }
      found.flushIOBuffers(); // what lay there from before the opening is of an unknown time
      port = Optional.of(found);
      return Optional.empty();
    } catch (SerialPortInvalidPortException e) {
      return Optional.of(PortFault.MISSING.sentence(path));
    } catch (LinkageError e) {
      return Optional.of(PortFault.NO_LIBRARY.sentence(path));
    }
  }

  private void configure(SerialPort found) {
    found.setComPortParameters(settings.baud(), settings.dataBits(), stopBits(), parity());
    found.setFlowControl(flow());
    found.setComPortTimeouts(
        SerialPort.TIMEOUT_READ_SEMI_BLOCKING | SerialPort.TIMEOUT_WRITE_BLOCKING,
        READ_MILLIS,
        WRITE_MILLIS);
    // before the opening these set the levels that the port is opened with
    if (settings.dtr() == Level.ON) {
      found.setDTR();
    } else {
      found.clearDTR();
    }
    if (settings.rts() == Level.ON) {
      found.setRTS();
    } else {
      found.clearRTS();
    }
  }

  private int stopBits() {
    return settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
  }

  private int parity() {
    return switch (settings.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case MARK -> SerialPort.MARK_PARITY;
      case SPACE -> SerialPort.SPACE_PARITY;
    };
  }

  private int flow() {
    return switch (settings.flow()) {
      case NONE -> SerialPort.FLOW_CONTROL_DISABLED;
      case RTS_CTS -> SerialPort.FLOW_CONTROL_RTS_ENABLED | SerialPort.FLOW_CONTROL_CTS_ENABLED;
      case DTR_DSR -> SerialPort.FLOW_CONTROL_DTR_ENABLED | SerialPort.FLOW_CONTROL_DSR_ENABLED;
      case XON_XOFF ->
          SerialPort.FLOW_CONTROL_XONXOFF_IN_ENABLED | SerialPort.FLOW_CONTROL_XONXOFF_OUT_ENABLED;
    };
  }

  @Override
  public byte[] read() throws GoneException {
    SerialPort open = port.orElseThrow(GoneException::new);
    int count = open.readBytes(buffer, buffer.length);
    if (count < 0) {
      throw new GoneException(); // the library still calls the port open then
    }
    return Arrays.copyOf(buffer, count);
  }

  @Override
  public void write(byte[] bytes) throws GoneException {
    SerialPort open = port.orElseThrow(GoneException::new);
    if (open.writeBytes(bytes, bytes.length) < 0) {
      throw new GoneException();
    }
  }

  @Override
  public void close() {
    port.ifPresent(SerialPort::closePort);
    port = Optional.empty();
  }

  /** The ports that the system names, one line each: the path and what the system calls it. */
  static List<String> listing() {
    try {
      return Arrays.stream(SerialPort.getCommPorts())
          .map(found -> found.getSystemPortPath() + " - " + found.getDescriptivePortName())
          .sorted()
          .toList();
    } catch (LinkageError e) {
      return List.of();
    }
  }
}
