package varanid.intake.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.StringJoiner;
import java.util.UUID;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import varanid.intake.platform.web.Role;

/** No request ever sees, or changes, what another organisation has. */
@ServiceTest
class TenantIsolationIT {

    /** How to make one of a collection, at its address; a new path of the API that names things needs its line here. */
    private static final Map<String, BiFunction<Client, String, Answer>> MAKERS = Map.ofEntries(
            makes("/api/v1/animals", "{}"),
            makes("/api/v1/animals/{animalId}/assessments", "{\"checklist\":\"varanid-intake\"}"),
            makes("/api/v1/animals/{animalId}/enclosure-readings", "{\"note\":\"n\"}"),
            makes("/api/v1/animals/{animalId}/weighings", "{\"value\":36,\"unit\":\"g\"}"),
            makes("/api/v1/animals/{animalId}/lengths", "{\"of\":\"tail\",\"value\":125,\"unit\":\"mm\"}"),
            makes("/api/v1/animals/{animalId}/samples", "{\"kind\":\"stool\"}"),
            makes("/api/v1/animals/{animalId}/diary", "{\"note\":\"n\"}"),
            makes(
                    "/api/v1/animals/{animalId}/vet-decisions",
                    "{\"seenUpTo\":\"2026-03-09T12:00:00Z\",\"sawAnimal\":\"read-only\",\"words\":\"w\","
                            + "\"writer\":{\"name\":\"n\",\"practice\":\"p\",\"licenceStatement\":\"l\"}}"),
            makes("/api/v1/animals/{animalId}/reports", "{\"diet\":\"d\"}"),
            Map.entry("/api/v1/animals/{animalId}/attachments", TenantIsolationIT::attach),
            makes("/api/v1/calendars", "{\"label\":\"c\"}"),
            Map.entry("/api/v1/rooms", TenantIsolationIT::makeRoom),
            makes("/api/v1/rooms/{roomId}/events", "{\"kind\":\"occurred\",\"cause\":\"breach-without-contact\"}"),
            Map.entry("/api/v1/animals/{animalId}/placements", TenantIsolationIT::place),
            makes("/api/v1/animals/{animalId}/links", "{\"kind\":\"summary\",\"recipient\":\"r\"}"),
            makes("/api/v1/animals/{animalId}/legal-holds", "{\"state\":\"none\"}"),
            makes("/api/v1/animals/{animalId}/release-approvals", "{\"approves\":true}"),
            Map.entry("/api/v1/animals/{animalId}/release-decisions", TenantIsolationIT::release),
            makes("/api/v1/consignments", "{\"name\":\"c\"}"),
            makes("/api/v1/people", "{\"name\":\"p\",\"roles\":[\"keeper\"]}"),
            makes("/api/v1/tokens", "{\"label\":\"t\"}"));

    private static final byte[] ONE_PIXEL = HexFormat.of()
            .parseHex("89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b55"
                    + "0000000a49444154789c636000000002000148afa4710000000049454e44ae426082");

    /** What belongs to nobody: it comes with the program. */
    private static final String OF_EVERYBODY = "/api/v1/checklists";

    @Autowired
    Organisations organisations;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mappings;

    private record Path(RequestMethod method, String pattern) {}

    @Test
    void answersNotFoundForEveryIdOfAnotherOrganisation() {
        Client owner = organisations.create().person(Role.values());
        Client stranger = organisations.create().person(Role.values());
        List<Path> paths = pathsWithId();
        assertThat(paths).hasSizeGreaterThan(5);
        for (Path path : paths) {
            String address = madeBy(owner, path.pattern());
            assertThat(asks(stranger, path.method(), address))
                    .as("%s", path)
                    .satisfies(answer -> assertThat(answer.isProblem("not-found"))
                            .as(answer.body())
                            .isTrue());
            // It is there, and it is its owner who is let through: to it, or to what is wrong with the empty body, or
            // that it is no form.
            assertThat(asks(owner, path.method(), address).status())
                    .as("%s for its owner", path)
                    .isIn(200, 201, 415, 422);
        }
    }

    @Test
    void listsNothingOfAnotherOrganisation() {
        Client owner = organisations.create().person(Role.values());
        Client stranger = organisations.create().person(Role.values());
        MAKERS.keySet().stream().filter(collection -> !collection.contains("{")).forEach(collection -> {
            String id = make(owner, collection, collection);
            assertThat(owner.get(collection + "?limit=200").body()).contains(id);
            assertThat(stranger.get(collection + "?limit=200").body()).doesNotContain(id);
        });
    }

    @Test
    void takesNoIdOfAnotherOrganisationInABody() {
        Client owner = organisations.create().person(Role.values());
        Client stranger = organisations.create().person(Role.values());
        String consignment = make(owner, "/api/v1/consignments", "/api/v1/consignments");
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

    private static Answer makeRoom(Client client, String address) {
        return client.post(address, "{\"name\":\"" + UUID.randomUUID() + "\"}");
    }

    private static Answer attach(Client client, String address) {
        return Multipart.of(ONE_PIXEL, "p.png", "image/png").post(client, address);
    }

    private static Answer place(Client client, String address) {
        return client.post(
                address, "{\"roomId\":\"" + makeRoom(client, "/api/v1/rooms").id() + "\"}");
    }

    /** Whatever is not met is overridden. */
    private static Answer release(Client client, String address) {
        String animal = address.substring(0, address.lastIndexOf('/'));
        place(client, animal + "/placements");
        StringJoiner overrides = new StringJoiner(",");
        client.get(animal + "/release-review").json().get("conditions").forEach(condition -> {
            if (!condition.get("state").stringValue().equals("met")) {
                overrides.add(condition.get("id") + ":\"because\"");
            }
        });
        return client.post(address, "{\"overrides\":{" + overrides + "}}");
    }

    private static Map.Entry<String, BiFunction<Client, String, Answer>> makes(String collection, String body) {
        return Map.entry(collection, (client, address) -> client.post(address, body));
    }

    /** The pattern with things of that person in place of its variables. */
    private static String madeBy(Client owner, String pattern) {
        String address = "";
        String collection = "";
        for (String part : pattern.substring(1).split("/")) {
            address += "/" + (part.startsWith("{") ? make(owner, collection, address) : part);
            collection += "/" + part;
        }
        return address;
    }

    private static String make(Client owner, String collection, String address) {
        BiFunction<Client, String, Answer> maker =
                Objects.requireNonNull(MAKERS.get(collection), "how to make one of " + collection);
        Answer made = maker.apply(owner, address);
        assertThat(made.status()).as(made.body()).isEqualTo(201);
        return made.id();
    }

    private static Answer asks(Client client, RequestMethod method, String address) {
        return method == RequestMethod.GET
                ? client.get(address)
                : client.sendJson(method.name(), address, "{}", "If-Match", "*");
    }

    private List<Path> pathsWithId() {
        Set<Path> paths = new HashSet<>();
        mappings.getHandlerMethods()
                .keySet()
                .forEach(mapping -> mapping.getPatternValues().stream()
                        .filter(pattern -> pattern.startsWith("/api/")
                                && pattern.contains("/{")
                                && !pattern.startsWith(OF_EVERYBODY))
                        .forEach(pattern -> mapping.getMethodsCondition()
                                .getMethods()
                                .forEach(method -> paths.add(new Path(method, pattern)))));
        return new ArrayList<>(paths);
    }
}
