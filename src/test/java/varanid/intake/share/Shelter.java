package varanid.intake.share;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.UUID;
import varanid.intake.platform.web.Role;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;

/** An organisation with people whose tokens live for months, and one animal, for tests of links. */
final class Shelter {

    private static final Duration MONTHS = Duration.ofDays(100);

    final Organisations.Organisation organisation;
    final Client keeper;
    final Client clinician;
    final Client anybody;
    final UUID animal;

    Shelter(Organisations organisations) {
        organisation = organisations.create();
        keeper = person(Role.KEEPER);
        clinician = person(Role.CLINICIAN);
        anybody = organisations.nobody();
        animal = animal("Ada");
    }

    Client person(Role role) {
        return organisation.person("Somebody", MONTHS, role);
    }

    UUID animal(String name) {
        return UUID.fromString(
                keeper.post("/api/v1/animals", "{\"name\":\"" + name + "\"}").id());
    }

    String links() {
        return "/api/v1/animals/" + animal + "/links";
    }

    Given give(String kind) {
        return give(keeper, kind, 30);
    }

    Given give(Client issuer, String kind, int days) {
        Answer answer = issuer.post(
                links(), "{\"kind\":\"" + kind + "\",\"recipient\":\"Harbour Practice\",\"validDays\":" + days + "}");
        assertThat(answer.status()).as(answer.body()).isEqualTo(201);
        return new Given(answer);
    }

    Answer revoke(Given link) {
        Answer revoked = keeper.post(links() + "/" + link.id() + "/revocation", "{}");
        assertThat(revoked.status()).as(revoked.body()).isEqualTo(200);
        return revoked;
    }

    Answer link(Given link) {
        Answer one = keeper.get(links() + "/" + link.id());
        assertThat(one.status()).as(one.body()).isEqualTo(200);
        return one;
    }

    void setActive(Client person, boolean active) {
        Answer changed = person(Role.ADMINISTRATOR)
                .put(
                        "/api/v1/people/" + person.personId(),
                        "{\"name\":\"S\",\"roles\":[\"keeper\"],\"active\":" + active + "}",
                        "If-Match",
                        "*");
        assertThat(changed.status()).as(changed.body()).isEqualTo(200);
    }

    /** Sends lines as they are, and gives all that comes back until the connection is closed, byte by byte. */
    String raw(String... lines) {
        try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), keeper.port())) {
            socket.getOutputStream()
                    .write((String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.ISO_8859_1));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A link as it was given out. */
    record Given(Answer answer) {

        String id() {
            return answer.id();
        }

        /** Where it opens, without the host. */
        String path() {
            return URI.create(answer.text("/address")).getPath();
        }

        String secret() {
            return path().substring(path().lastIndexOf('/') + 1);
        }
    }
}
