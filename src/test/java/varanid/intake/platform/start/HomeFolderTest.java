package varanid.intake.platform.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class HomeFolderTest {

    private static final Path USER = Path.of("/home/kim");

    @TempDir
    Path parent;

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void liesWhereTheOperatingSystemKeepsTheDataOfUsers() {
        // XDG Base Directory Specification 0.8: $XDG_DATA_HOME, else ~/.local/share; relative values are ignored.
        assertThat(HomeFolder.defaultFolder(Map.of(), "Linux", USER))
                .isEqualTo(Path.of("/home/kim/.local/share/varanid-intake"));
        assertThat(HomeFolder.defaultFolder(Map.of("XDG_DATA_HOME", "/data"), "Linux", USER))
                .isEqualTo(Path.of("/data/varanid-intake"));
        assertThat(HomeFolder.defaultFolder(Map.of("XDG_DATA_HOME", "data"), "Linux", USER))
                .isEqualTo(Path.of("/home/kim/.local/share/varanid-intake"));
        assertThat(HomeFolder.defaultFolder(Map.of(), "Mac OS X", USER))
                .isEqualTo(Path.of("/home/kim/Library/Application Support/varanid-intake"));
        assertThat(HomeFolder.defaultFolder(Map.of("LOCALAPPDATA", "/local"), "Windows 11", USER))
                .isEqualTo(Path.of("/local/varanid-intake"));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void isMadeForItsOwnerOnly() throws IOException {
        HomeFolder home = HomeFolder.open(parent.resolve("a").resolve("b"));
        assertThat(permissions(home.path())).isEqualTo("rwx------");
    }

    @Test
    void writesWholeFilesForTheOwnerOnlyAndLeavesNothingElse() throws IOException {
        HomeFolder home = HomeFolder.open(parent);
        home.write("token", "one\n");
        home.write("token", "two\n");
        assertThat(home.find("token")).contains("two\n");
        assertThat(home.find("absent")).isEmpty();
        try (Stream<Path> files = Files.list(parent)) {
            assertThat(files).containsExactly(parent.resolve("token"));
        }
        if (System.getProperty("os.name").startsWith("Windows")) {
            return;
        }
        assertThat(permissions(home.resolve("token"))).isEqualTo("rw-------");
    }

    @Test
    void refusesAFile() throws IOException {
        Path file = Files.createFile(parent.resolve("file"));
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> HomeFolder.open(file))
                .withMessage("The data folder %s is a file, not a folder.", file);
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void refusesAFolderBelowAFile() throws IOException {
        Path file = Files.createFile(parent.resolve("file"));
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> HomeFolder.open(file.resolve("home")))
                .withMessageContaining("cannot be used");
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void refusesAFolderOfAnotherUser() throws IOException {
        assumeThat(isRoot()).as("only root can give a folder away").isTrue();
        Path folder = Files.createDirectory(parent.resolve("theirs"));
        Files.setAttribute(folder, "unix:uid", 65534);
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> HomeFolder.open(folder))
                .withMessageMatching("The data folder .*theirs belongs to the user .*, but this is the user root\\.");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).isEmpty();
        }
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void refusesAFolderWithoutThePermissionToWrite() throws IOException {
        assumeThat(isRoot()).as("root may write everywhere").isFalse();
        Path folder = Files.createDirectory(
                parent.resolve("closed"),
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("r-x------")));
        assertThatExceptionOfType(CannotStart.class)
                .isThrownBy(() -> HomeFolder.open(folder))
                .withMessageContaining("no permission for " + folder);
    }

    @Test
    void aFullDiskIsToldAsSuch() {
        CannotStart told = CannotStart.becauseOf(new IOException("No space left on device"), parent);
        assertThat(told).hasMessageStartingWith("There is no space left on the disk that holds the data folder");
    }

    private static String permissions(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }

    private boolean isRoot() throws IOException {
        return Integer.valueOf(0).equals(Files.getAttribute(parent, "unix:uid"));
    }
}
