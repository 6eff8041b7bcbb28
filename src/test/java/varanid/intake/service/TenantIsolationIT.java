package varanid.intake.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import varanid.intake.platform.web.Role;

/** No request ever sees, or changes, what another organisation has. */
@ServiceTest
class TenantIsolationIT {

    /** How to make the thing that a path's id names; a new path of the API needs its line here. */
    private static final Map<String, Function<Client, String>> MAKERS = Map.of(
            "/api/v1/animals", client -> client.post("/api/v1/animals", "{}").id(),
            "/api/v1/consignments",
                    client -> client.post("/api/v1/consignments", "{\"name\":\"c\"}")
                            .id(),
            "/api/v1/people",
                    client -> client.post("/api/v1/people", "{\"name\":\"p\",\"roles\":[\"keeper\"]}")
                            .id(),
            "/api/v1/tokens",
                    client -> client.post("/api/v1/tokens", "{\"label\":\"t\"}").id());

    @Autowired
    Organisations organisations;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mappings;

    private record Path(RequestMethod method, String pattern) {

        String collection() {
            return pattern.substring(0, pattern.indexOf("/{"));
        }
    }

    @Test
    void answersNotFoundForEveryIdOfAnotherOrganisation() {
        Client owner = organisations.create().person(everyRole());
        Client stranger = organisations.create().person(everyRole());
        List<Path> paths = pathsWithId();
        assertThat(paths).isNotEmpty();
        for (Path path : paths) {
            String id = make(path.collection(), owner);
            String address = path.pattern().replaceFirst("\\{[^}]+}", id);
            Answer answer = path.method() == RequestMethod.GET
                    ? stranger.get(address)
                    : stranger.sendJson(path.method().name(), address, "{}", "If-Match", "*");
            assertThat(answer.isProblem("not-found")).as("%s: %s", path, answer).isTrue();
            Answer own = owner.get(path.collection() + "/" + id);
            assertThat(own.status()).as("%s is there", own).isEqualTo(200);
            assertThat(own.body()).doesNotContain("revokedAt");
        }
    }

    @Test
    void listsNothingOfAnotherOrganisation() {
        Client owner = organisations.create().person(everyRole());
        Client stranger = organisations.create().person(everyRole());
        MAKERS.forEach((collection, maker) -> {
            String id = maker.apply(owner);
            assertThat(owner.get(collection + "?limit=200").body()).contains(id);
            assertThat(stranger.get(collection + "?limit=200").body()).doesNotContain(id);
        });
    }

    @Test
    void takesNoIdOfAnotherOrganisationInABody() {
        Client owner = organisations.create().person(everyRole());
        Client stranger = organisations.create().person(everyRole());
        String consignment = make("/api/v1/consignments", owner);
        assertThat(stranger.post("/api/v1/animals", "{\"consignmentId\":\"" + consignment + "\"}")
                        .faults())
                .containsExactly("#/consignmentId");
        assertThat(stranger.get("/api/v1/animals?consignment=" + consignment)
                        .json()
                        .get("items"))
                .isEmpty();
        assertThat(stranger.post("/api/v1/tokens", "{\"label\":\"t\",\"personId\":\"" + owner.personId() + "\"}")
                        .faults())
                .containsExactly("#/personId");
    }

    private static String make(String collection, Client owner) {
        Function<Client, String> maker =
                Objects.requireNonNull(MAKERS.get(collection), "how to make one of " + collection);
        return maker.apply(owner);
    }

    private List<Path> pathsWithId() {
        Set<Path> paths = new HashSet<>();
        mappings.getHandlerMethods()
                .keySet()
                .forEach(mapping -> mapping.getPatternValues().stream()
                        .filter(pattern -> pattern.startsWith("/api/") && pattern.contains("/{"))
                        .forEach(pattern -> mapping.getMethodsCondition()
                                .getMethods()
                                .forEach(method -> paths.add(new Path(method, pattern)))));
        return new ArrayList<>(paths);
    }

    private static Role[] everyRole() {
        return Role.values();
    }
}
