package varanid.intake.platform.database;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What PostgreSQL writes into {@code postmaster.pid}: who runs on a data folder. Source: PostgreSQL 18,
 * {@code src/include/utils/pidfile.h}; the first three lines have been the same since version 9.0.
 *
 * @param processId line 1; PostgreSQL writes it negative for a single-user server
 * @param dataFolder line 2
 * @param started line 3, to the second
 */
record PidFile(long processId, Path dataFolder, Instant started) {

    /** How far apart the two clocks' readings of one start may lie: PostgreSQL's and the operating system's. */
    private static final Duration SAME_START = Duration.ofSeconds(10);

    /** Reads the file's text; empty where it is not one (PostgreSQL was killed while it wrote). */
    static Optional<PidFile> parse(String text) {
        List<String> lines = text.lines().map(String::strip).toList();
        if (lines.size() < 3 || lines.get(1).isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new PidFile(
                    Math.abs(Long.parseLong(lines.get(0))),
                    Path.of(lines.get(1)),
                    Instant.ofEpochSecond(Long.parseLong(lines.get(2)))));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /**
     * Whether a process is the server that wrote this file. The number alone proves nothing: numbers are given again.
     *
     * @param process what the operating system tells of the process
     * @param folder the data folder, without symbolic links
     */
    boolean isWrittenBy(ProcessHandle.Info process, Path folder) {
        boolean postgres = process.command()
                .map(command -> Path.of(command).getFileName().toString())
                .filter(name -> name.equals("postgres") || name.equals("postgres.exe"))
                .isPresent();
        if (!postgres) {
            return false;
        }
        // Windows does not tell the arguments of a process; there the time of its start has to do.
        return process.arguments()
                .map(arguments -> namesFolder(arguments, folder))
                .orElseGet(() -> process.startInstant()
                        .map(start -> Duration.between(start, started).abs().compareTo(SAME_START) <= 0)
                        .orElse(false));
    }

    private static boolean namesFolder(String[] arguments, Path folder) {
        return Arrays.stream(arguments).anyMatch(argument -> isFolder(argument, folder));
    }

    private static boolean isFolder(String argument, Path folder) {
        try {
            Path path = Path.of(argument);
            return path.isAbsolute() && path.toRealPath().equals(folder);
        } catch (IOException | IllegalArgumentException e) {
            return false;
        }
    }
}
