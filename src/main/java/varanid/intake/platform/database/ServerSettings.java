package varanid.intake.platform.database;

import java.nio.file.Path;
import java.util.List;

/**
 * How the embedded server is run.
 *
 * @param programs where the PostgreSQL programs are unpacked
 * @param port the TCP port on 127.0.0.1; 0 for any free one
 * @param durable whether a commit is on the disk when it returns; only tests do without
 */
record ServerSettings(Path programs, int port, boolean durable) {

    ServerSettings {
        if (port < 0 || port > 65535) {
            throw new IllegalArgumentException("no port: " + port);
        }
    }

    /**
     * The server's options. Given on its command line, so that no edited file outranks them. All are known to
     * PostgreSQL 14 and later.
     */
    List<String> options() {
        String kept = durable ? "on" : "off";
        return List.of(
                "fsync=" + kept,
                "synchronous_commit=" + kept,
                "full_page_writes=" + kept,
                // This machine only, and no socket file in a folder that others can write to.
                "listen_addresses=127.0.0.1",
                "unix_socket_directories=",
                "password_encryption=scram-sha-256",
                "max_connections=" + (durable ? 40 : 200),
                "timezone=UTC",
                "log_timezone=UTC");
    }
}
