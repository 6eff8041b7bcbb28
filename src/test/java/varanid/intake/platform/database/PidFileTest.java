package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PidFileTest {

    private static final Instant STARTED = Instant.ofEpochSecond(1_795_617_816L);

    @TempDir
    Path parent;

    private Path folder = Path.of("unset");

    @BeforeEach
    void makeFolder() throws IOException {
        folder = Files.createDirectory(parent.resolve("database")).toRealPath();
    }

    @Test
    void readsWhatARunningServerWrote() {
        // As PostgreSQL 18.6 wrote it.
        String text = """
                6625
                /data/database
                1795617816
                39133

                127.0.0.1
                 11600545         6
                ready  \s
                """;
        assertThat(PidFile.parse(text)).contains(new PidFile(6625, Path.of("/data/database"), STARTED));
    }

    @Test
    void readsASingleUserServerWhoseNumberIsNegative() {
        assertThat(PidFile.parse("-77\n/data/database\n1795617816\n"))
                .contains(new PidFile(77, Path.of("/data/database"), STARTED));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "6625", "6625\n/data", "6625\n\n1795617816", "six\n/data\n1795617816"})
    void takesAFileThatWasCutOffForNone(String text) {
        assertThat(PidFile.parse(text)).isEmpty();
    }

    @Test
    void knowsTheServerOfItsFolder() {
        assertThat(isOurs("/opt/pg/bin/postgres", "-D", folder.toString())).isTrue();
    }

    @Test
    void knowsTheServerOfItsFolderBehindASymbolicLink() throws IOException {
        Path link = Files.createSymbolicLink(parent.resolve("link"), folder);
        assertThat(isOurs("/opt/pg/bin/postgres", "-D", link.toString())).isTrue();
    }

    @Test
    void isNotFooledByAPostgresOfAnotherFolder() {
        assertThat(isOurs("/opt/pg/bin/postgres", "-D", parent.toString())).isFalse();
    }

    @Test
    void isNotFooledByAnotherProgramThatNamesTheFolder() {
        assertThat(isOurs("/usr/bin/du", "-s", folder.toString())).isFalse();
    }

    @Test
    void isNotFooledByADeadProcessThatNobodyCollected() {
        assertThat(file().isWrittenBy(new Process(null, null, STARTED), folder)).isFalse();
    }

    @Test
    void goesByTheTimeOfTheStartWhereArgumentsAreNotTold() {
        Process same = new Process("/pg/postgres.exe", null, STARTED.plus(Duration.ofSeconds(1)));
        Process later = new Process("/pg/postgres.exe", null, STARTED.plus(Duration.ofMinutes(1)));
        assertThat(file().isWrittenBy(same, folder)).isTrue();
        assertThat(file().isWrittenBy(later, folder)).isFalse();
    }

    private boolean isOurs(String command, String... arguments) {
        return file().isWrittenBy(new Process(command, arguments, STARTED), folder);
    }

    private PidFile file() {
        return new PidFile(6625, folder, STARTED);
    }

    private record Process(@Nullable String program, String @Nullable [] given, Instant start)
            implements ProcessHandle.Info {

        @Override
        public Optional<String> command() {
            return Optional.ofNullable(program);
        }

        @Override
        public Optional<String> commandLine() {
            return Optional.empty();
        }

        @Override
        public Optional<String[]> arguments() {
            return Optional.ofNullable(given);
        }

        @Override
        public Optional<Instant> startInstant() {
            return Optional.of(start);
        }

        @Override
        public Optional<Duration> totalCpuDuration() {
            return Optional.empty();
        }

        @Override
        public Optional<String> user() {
            return Optional.empty();
        }
    }
}
