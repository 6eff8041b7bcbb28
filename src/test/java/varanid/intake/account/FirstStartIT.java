package varanid.intake.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import varanid.intake.platform.start.HomeFolder;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** What the first start leaves behind, and what a later one does when it is asked for a new token. */
@ServiceTest
class FirstStartIT {

    @Autowired
    HomeFolder home;

    @Autowired
    Accounts accounts;

    @Autowired
    varanid.intake.account.Organisations rows;

    @Autowired
    People people;

    @Autowired
    Tokens tokens;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PlatformTransactionManager transactions;

    @Autowired
    Clock clock;

    @Autowired
    Organisations organisations;

    @Test
    void writesAnAdministratorsTokenThatOnlyTheOwnerCanRead() throws IOException {
        Path file = home.resolve("token");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        Client administrator = client(home);
        assertThat(administrator.get("/api/v1/organisation").status()).isEqualTo(200);
        assertThat(administrator
                        .get("/api/v1/people")
                        .json()
                        .at("/items/0/roles/0")
                        .stringValue())
                .isEqualTo("administrator");
        assertThat(administrator.get("/api/v1/tokens").body()).doesNotContain("expiresAt");
    }

    @Test
    void leavesTheTokenAloneWhenItStartsAgain() throws IOException {
        String before = Files.readString(home.resolve("token"));
        start(home);
        assertThat(Files.readString(home.resolve("token"))).isEqualTo(before);
        assertThat(client(home).get("/api/v1/organisation").status()).isEqualTo(200);
    }

    @Test
    void writesANewTokenOnRequestAndTheOldOneOpensNothing() throws IOException {
        Client before = client(home);
        start(home, "--reissue-token");
        Client after = client(home);
        assertThat(after.token()).isNotEqualTo(before.token());
        assertThat(before.get("/api/v1/organisation").status()).isEqualTo(401);
        assertThat(after.get("/api/v1/organisation").status()).isEqualTo(200);
    }

    @Test
    void commitsNothingWhereTheFileCannotBeWritten(@TempDir Path folder) throws IOException {
        HomeFolder gone = HomeFolder.open(folder.resolve("home"));
        Files.delete(gone.path());
        Client before = client(home);
        assertThatThrownBy(() -> start(gone, "--reissue-token")).hasMessageContaining("token");
        assertThat(before.get("/api/v1/organisation").status()).isEqualTo(200);
    }

    private void start(HomeFolder folder, String... arguments) {
        new FirstStart(
                        folder,
                        new DefaultApplicationArguments(arguments),
                        accounts,
                        rows,
                        people,
                        tokens,
                        jdbc,
                        transactions,
                        clock)
                .afterSingletonsInstantiated();
    }

    private Client client(HomeFolder folder) throws IOException {
        String token = Files.readString(folder.resolve("token")).strip();
        return new Client(organisations.nobody().port(), UUID.randomUUID(), token);
    }
}
