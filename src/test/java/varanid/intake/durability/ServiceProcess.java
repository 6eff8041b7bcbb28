package varanid.intake.durability;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import varanid.intake.VaranidIntake;

/** The whole service as a process of its own, on a data folder and with an embedded database that waits for the disk. */
final class ServiceProcess implements AutoCloseable {

    private static final Pattern READY = Pattern.compile("answers at http://127\\.0\\.0\\.1:(\\d+)");

    private final Process process;
    private final CompletableFuture<Integer> port = new CompletableFuture<>();
    private final StringBuffer said = new StringBuffer();

    private ServiceProcess(Process process) {
        this.process = process;
        Thread reader = new Thread(this::readOutput, "service-output");
        reader.setDaemon(true);
        reader.start();
    }

    /**
     * Starts it and waits until it says that it answers.
     *
     * @param programs where the database's programs are unpacked
     */
    static ServiceProcess start(Path home, Path programs) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        classPath(),
                        VaranidIntake.class.getName()))
                .redirectErrorStream(true);
        builder.environment().put("VARANID_INTAKE_HOME", home.toString());
        builder.environment().put("VARANID_INTAKE_DATABASE_PROGRAMS", programs.toString());
        builder.environment().put("SERVER_PORT", "0");
        ServiceProcess service = new ServiceProcess(builder.start());
        service.port.get(5, TimeUnit.MINUTES);
        return service;
    }

    /** Without empty entries: each would be the working directory, whose migrations would then be there twice. */
    private static String classPath() {
        return Pattern.compile(File.pathSeparator, Pattern.LITERAL)
                .splitAsStream(System.getProperty("java.class.path"))
                .filter(entry -> !entry.isEmpty())
                .collect(Collectors.joining(File.pathSeparator));
    }

    int port() {
        return port.join();
    }

    /** {@code kill -9}, and waits until it is gone. */
    void kill() {
        ProcessHandle handle = process.toHandle();
        handle.destroyForcibly();
        handle.onExit().join();
    }

    /** {@code kill -TERM}, and waits until it and its database have ended. */
    void stop() {
        process.toHandle().destroy();
        process.onExit().join();
    }

    @Override
    public void close() {
        kill();
    }

    private void readOutput() {
        try (BufferedReader output = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                said.append(line).append('\n');
                Matcher ready = READY.matcher(line);
                if (ready.find()) {
                    port.complete(Integer.parseInt(ready.group(1)));
                }
            }
        } catch (IOException e) {
            port.completeExceptionally(new UncheckedIOException(e));
        }
        port.completeExceptionally(new IllegalStateException("the service ended and said:\n" + said));
    }
}
