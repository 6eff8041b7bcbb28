package varanid.intake.platform.database;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Another Java process with the class path of the tests, whose output is read line by line; ended by {@code close}. */
final class ChildJvm implements AutoCloseable {

    private final Process process;
    private final BufferedReader output;
    private final StringBuilder read = new StringBuilder();

    private ChildJvm(Process process) {
        this.process = process;
        this.output = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    }

    /** How to run {@code java}: as whom, and with which classes. */
    record As(List<String> prefix, String classPath) {

        static As me() {
            return new As(List.of(), String.join(File.pathSeparator, classPathOfTests()));
        }

        /** Without empty entries, which would mean the current folder. */
        static List<String> classPathOfTests() {
            return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                    .filter(entry -> !entry.isEmpty())
                    .toList();
        }
    }

    static ChildJvm start(As as, Map<String, String> environment, Class<?> main, String... arguments)
            throws IOException {
        List<String> command = new ArrayList<>(as.prefix());
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-cp", as.classPath(), main.getName()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().putAll(environment);
        return new ChildJvm(builder.start());
    }

    /** Reads on until a line contains the text, and returns that line; fails where the output ends before. */
    String awaitLine(String text) throws IOException {
        for (@Nullable String line = readLine(); line != null; line = readLine()) {
            if (line.contains(text)) {
                return line;
            }
        }
        throw new AssertionError("the process ended without a line with \"" + text + "\" and said:\n" + read);
    }

    /** Everything it says until it ends by itself. */
    String awaitEnd() throws IOException {
        @Nullable String line = readLine();
        while (line != null) {
            line = readLine();
        }
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
        return read.toString();
    }

    int exitCode() {
        return process.exitValue();
    }

    /** {@code kill -9}; its output up to then can still be read. */
    void kill() throws IOException {
        // Not through Process, which would close the output.
        process.toHandle().destroyForcibly();
        awaitExit();
    }

    /** {@code kill -TERM}. */
    void stop() throws IOException {
        process.toHandle().destroy();
        awaitExit();
    }

    private void awaitExit() throws IOException {
        try {
            if (!process.waitFor(2, TimeUnit.MINUTES)) {
                throw new IOException("the process does not end");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }

    private @Nullable String readLine() throws IOException {
        @Nullable String line = output.readLine();
        if (line != null) {
            read.append(line).append('\n');
        }
        return line;
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
