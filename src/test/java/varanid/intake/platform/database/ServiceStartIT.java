package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import varanid.intake.VaranidIntake;
import varanid.intake.service.Browser;

/** The whole service in a process of its own: what it says, its exit code, and what it leaves running. */
class ServiceStartIT {

    private static final Pattern STARTED = Pattern.compile("answers at http://127\\.0\\.0\\.1:(\\d+)");

    @TempDir
    Path home;

    @Test
    void startsAgainAfterAKillRefusesASecondStartAndEndsInOrder() throws Exception {
        try (ChildJvm killed = start(Map.of())) {
            awaitPort(killed);
            killed.kill();
        }
        assertThat(pidFile())
                .as("the database server outlives the killed service")
                .exists();
        try (ChildJvm service = start(Map.of())) {
            int port = awaitPort(service);
            String line = service.awaitLine("/sign-in/");
            assertHealthy(service, port);
            try (ChildJvm second = start(Map.of())) {
                failsWith(second, "Varanid Intake is already running on the folder");
            }
            assertHealthy(service, port);
            assertThatTheLinkSignsIn(line, port);
            service.stop();
        }
        assertThat(pidFile()).as("the database server ends with the service").doesNotExist();
    }

    @Test
    void tellsThatThePortIsTakenAndLeavesNoDatabaseServerRunning() throws Exception {
        try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
                ChildJvm service = start(Map.of("SERVER_PORT", String.valueOf(other.getLocalPort())))) {
            failsWith(service, "Port %d is already used by another program".formatted(other.getLocalPort()));
        }
        assertThat(pidFile()).doesNotExist();
        assertThat(home.resolve("database")).as("it had been started").exists();
    }

    @Test
    void tellsThatTheNamedDatabaseCannotBeReached() throws Exception {
        Map<String, String> unreachable = Map.of(
                "SPRING_DATASOURCE_URL", "jdbc:postgresql://127.0.0.1:1/intake",
                "SPRING_DATASOURCE_USERNAME", "kim",
                "SPRING_DATASOURCE_PASSWORD", "secret");
        try (ChildJvm service = start(unreachable)) {
            failsWith(service, "The database jdbc:postgresql://127.0.0.1:1/intake cannot be reached.");
        }
        assertThat(home.resolve("database"))
                .as("no embedded database in its place")
                .doesNotExist();
    }

    private static void failsWith(ChildJvm service, String message) throws IOException {
        String said = service.awaitEnd();
        assertThat(said).contains("Varanid Intake could not start.").contains(message);
        assertThat(said).as("no stack trace").doesNotContain("\tat ", "Exception");
        assertThat(said.lines().filter(line -> !line.isBlank() && !line.contains(" INFO ")))
                .as("one message, and no log of what went wrong")
                .hasSize(3);
        assertThat(service.exitCode()).isEqualTo(1);
    }

    private ChildJvm start(Map<String, String> more) throws IOException {
        Map<String, String> environment = new HashMap<>(Map.of(
                "VARANID_INTAKE_HOME",
                home.toString(),
                "VARANID_INTAKE_DATABASE_PROGRAMS",
                TestDatabase.PROGRAMS.toString(),
                "SERVER_PORT",
                "0",
                "LOGGING_LEVEL_ORG_SPRINGFRAMEWORK_BOOT_TOMCAT",
                "info"));
        environment.putAll(more);
        if (!more.isEmpty()) {
            environment.remove("LOGGING_LEVEL_ORG_SPRINGFRAMEWORK_BOOT_TOMCAT");
        }
        return ChildJvm.start(ChildJvm.As.me(), environment, VaranidIntake.class);
    }

    private static void assertThatTheLinkSignsIn(String line, int port) {
        String path = URI.create(line.strip()).getPath();
        Browser browser = new Browser(port);
        browser.submit(path, "/sign-in/link", Map.of("secret", path.substring("/sign-in/".length())));
        assertThat(browser.get("/").body()).contains("Administrator");
        assertThat(browser.get(path).status()).isEqualTo(404);
    }

    private static int awaitPort(ChildJvm service) throws IOException {
        Matcher line = STARTED.matcher(service.awaitLine("answers at http://"));
        assertThat(line.find()).isTrue();
        return Integer.parseInt(line.group(1));
    }

    private Path pidFile() {
        return home.resolve("database").resolve("postmaster.pid");
    }

    private static void assertHealthy(ChildJvm service, int port) throws Exception {
        URI health = URI.create("http://127.0.0.1:%d/actuator/health".formatted(port));
        try {
            HttpResponse<Void> answer = HttpClient.newHttpClient()
                    .send(HttpRequest.newBuilder(health).build(), HttpResponse.BodyHandlers.discarding());
            assertThat(answer.statusCode()).isEqualTo(200);
        } catch (IOException e) {
            service.kill();
            throw new AssertionError("no answer from " + health + "; the service said:\n" + service.awaitEnd(), e);
        }
    }
}
