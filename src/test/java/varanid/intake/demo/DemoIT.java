package varanid.intake.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.platform.start.HomeFolder;
import varanid.intake.service.Answer;
import varanid.intake.service.Client;
import varanid.intake.service.Organisations;
import varanid.intake.service.Readme;
import varanid.intake.service.ServiceTest;

@ServiceTest
class DemoIT {

    @Autowired
    Demo demo;

    @Autowired
    HomeFolder home;

    @Autowired
    Organisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Environment environment;

    @LocalServerPort
    int port;

    @AfterEach
    void leaveNoDemoBehind() {
        demo.remove();
    }

    @Test
    void loadsAnimalsAtEveryStage() throws IOException {
        assertThat(demo.load())
                .contains("with 16 animals")
                .contains(home.resolve("demo-token").toString());
        Client keeper = person("demo-token");
        assertThat(keeper.get("/api/v1/organisation").text("/name")).isEqualTo("Reed Bank Reptile Rescue");
        List<JsonNode> animals = items(keeper.get("/api/v1/animals?limit=200"));
        assertThat(animals).hasSize(16);
        String van = items(keeper.get("/api/v1/consignments")).get(0).get("id").stringValue();
        assertThat(items(keeper.get("/api/v1/animals?consignment=" + van))).hasSize(6);

        // The recommendation of each look, oldest first; the animal on the doorstep has no name and no look.
        Map<String, List<String>> urgencies = new TreeMap<>();
        for (JsonNode animal : animals) {
            urgencies.put(
                    animal.path("name").asString("on the doorstep"),
                    items(keeper.get("/api/v1/animals/" + animal.get("id").stringValue() + "/assessments")).stream()
                            .map(look -> look.get("urgency").stringValue())
                            .toList());
        }
        System.out.println("the demo's recommendations: " + urgencies);
        assertThat(urgencies).containsEntry("Bulrush", List.of("stat")).containsEntry("Fern", List.of("routine"));
        assertThat(urgencies).containsEntry("on the doorstep", List.of());
        assertThat(urgencies.get("Mudlark")).hasSize(2).first().isEqualTo("stat");
        assertThat(urgencies.get("Moss")).hasSize(2).last().isEqualTo("routine");
        assertThat(urgencies.values().stream().flatMap(List::stream)).contains("routine", "urgent", "asap", "stat");
    }

    @Test
    void showsAColdAnimalExcusedAndALookThatWasCorrected() throws IOException {
        demo.load();
        Client keeper = person("demo-token");
        List<JsonNode> moss = looksAt(keeper, "Moss");
        assertThat(moss).hasSize(2);
        JsonNode cold = read(keeper, moss.get(0)).json();
        assertThat(StreamSupport.stream(cold.at("/lookAgain").spliterator(), false)
                        .map(each -> each.get("finding").stringValue()))
                .contains("dull", "cannot-lift-body");
        assertThat(read(keeper, moss.get(1)).json().at("/lookAgain").size()).isZero();
        List<JsonNode> mudlark = looksAt(keeper, "Mudlark");
        assertThat(mudlark.get(0).get("supersededBy")).isEqualTo(mudlark.get(1).get("id"));
        assertThat(read(keeper, mudlark.get(0)).text("/note")).contains("Deep hole");
    }

    @Test
    void whatTheReadmeShowsOfTheDemoIsWhatItAnswers() throws IOException {
        demo.load();
        Client keeper = person("demo-token");
        String readme = Readme.text();
        String follow = readme.substring(readme.indexOf("## Follow it"), readme.indexOf("## How the decision is made"));
        Map<String, String> ids = new TreeMap<>();
        Matcher named =
                Pattern.compile("(\\w+)=\\$\\(id (\\w+) '?([\\w ]+)'?\\)").matcher(follow);
        while (named.find()) {
            String list = keeper.get("/api/v1/" + named.group(2) + "?limit=200").body();
            Matcher id = Pattern.compile("\"id\":\"([^\"]*)\",\"name\":\"" + named.group(3) + "\"")
                    .matcher(list);
            assertThat(id.find()).as(named.group()).isTrue();
            ids.put("$" + named.group(1), id.group(1));
        }
        Matcher example = Pattern.compile(
                        "```sh\n(get|post) (\\S+)(?: '([^\\n]*)')?\n```\n\n```json\n(.*?)```", Pattern.DOTALL)
                .matcher(follow);
        int examples = 0;
        while (example.find()) {
            String path = "/api/v1/" + resolve(example.group(2), ids);
            Answer answer = example.group(1).equals("get")
                    ? keeper.get(path)
                    : keeper.post(path, resolve(example.group(3).replace("'", ""), ids));
            assertThat(answer.status()).as(path + answer.body()).isBetween(200, 201);
            Readme.assertShown(path, JsonMapper.shared().readTree(example.group(4)), answer.json());
            examples++;
        }
        assertThat(examples).isEqualTo(6);
    }

    @Test
    void showsWhereEachAnimalStands() throws IOException {
        demo.load();
        Client keeper = person("demo-token");
        assertThat(of(keeper, "Sallow", "quarantine").text("/clock/inWords")).startsWith("Earliest release on ");
        assertThat(of(keeper, "Sallow", "quarantine").json().at("/next").size()).isPositive();
        assertThat(of(keeper, "Fern", "quarantine").text("/clock/inWords"))
                .contains("a new animal in the same air or tools");
        assertThat(of(keeper, "Marsh", "quarantine").text("/clock/inWords"))
                .startsWith("No date yet")
                .contains("the end of treatment: mites");
        assertThat(of(keeper, "Sorrel", "quarantine").text("/where")).isEqualTo("resident");

        assertThat(conditions(keeper, "Willow")).containsEntry("vet-approval", "unmet");
        assertThat(conditions(keeper, "Willow").values().stream().filter("met"::equals))
                .hasSize(7);
        assertThat(conditions(keeper, "Osier")).containsEntry("stool-negative", "unknown");
        assertThat(conditions(keeper, "Marsh")).containsEntry("no-legal-hold", "unmet");
        List<JsonNode> ended = items(of(keeper, "Sorrel", "release-decisions"));
        assertThat(ended).hasSize(1);
        assertThat(of(
                                keeper,
                                "Sorrel",
                                "release-decisions/" + ended.get(0).get("id").stringValue())
                        .text("/overrides/stool-negative"))
                .contains("nobody wrote the time down");
    }

    @Test
    void showsWhatWeighingsSurroundingsAndDiarySay() throws IOException {
        demo.load();
        Client keeper = person("demo-token");
        JsonNode falls = of(keeper, "Sallow", "weight-trend").json().at("/slope/interval");
        assertThat(falls.get("highestPercentPerDayWithRounding").doubleValue()).isNegative();
        JsonNode coarse = of(keeper, "Mudlark", "weight-trend").json().at("/thresholds");
        assertThat(texts(coarse, "state")).contains("cannot-tell");
        Answer surroundings = of(keeper, "Sallow", "surroundings");
        assertThat(texts(surroundings.json().at("/signs"), "code")).contains("night-minimum-below");
        assertThat(texts(surroundings.json().at("/cautions"), "id")).contains("guard-the-lamp");
        assertThat(of(keeper, "Fern", "demeanour").text("/trend/direction")).isEqualTo("calmer");
    }

    @Test
    void givesTheVetATokenThatReadsButCannotKeepALook() throws IOException {
        demo.load();
        Client vet = person("demo-clinician-token");
        assertThat(items(vet.get("/api/v1/animals"))).isNotEmpty();
        assertThat(vet.post("/api/v1/animals", "{}").status()).isEqualTo(403);
    }

    @Test
    void loadsOnceAndSaysSo() throws IOException {
        demo.load();
        String token = Files.readString(home.resolve("demo-token"));
        assertThat(demo.load()).contains("there already");
        assertThat(Files.readString(home.resolve("demo-token"))).isEqualTo(token);
        assertThat(items(person("demo-token").get("/api/v1/animals?limit=200"))).hasSize(16);
    }

    @Test
    void removesTheDemoAndNothingOfAnybodyElse() throws Exception {
        Client other = organisations.create().keeper();
        String animal = other.post("/api/v1/animals", "{\"name\":\"Bulrush\"}", "Idempotency-Key", "other")
                .header("Location")
                .orElseThrow();
        Answer first = other.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\"}");
        other.post(animal + "/assessments", "{\"checklist\":\"varanid-intake\",\"supersedes\":\"" + first.id() + "\"}");
        Map<String, String> before = everything();

        demo.load();
        Client keeper = person("demo-token");
        String demoAnimal =
                items(keeper.get("/api/v1/animals")).get(0).get("id").stringValue();
        keeper.post(
                "/api/v1/animals/" + demoAnimal + "/assessments",
                "{\"checklist\":\"varanid-intake\"}",
                "Idempotency-Key",
                "demo");
        assertThat(everything()).isNotEqualTo(before);

        assertThat(demo.remove()).contains("with all its");
        assertThat(everything()).isEqualTo(before);
        assertThat(keeper.get("/api/v1/animals").status()).isEqualTo(401);
        assertThat(home.resolve("demo-token")).doesNotExist();
        assertThat(home.resolve("demo-clinician-token")).doesNotExist();
        assertThat(other.get(first.header("Location").orElseThrow()).body()).isEqualTo(first.body());
    }

    @Test
    void leavesTheGuardsOfAppendOnlyTablesAsTheyWere() throws SQLException {
        demo.load();
        demo.remove();
        try (Connection owner = owner();
                Statement statement = owner.createStatement()) {
            for (String table : List.of("assessment", "checklist_in_use", "demo_organisation")) {
                assertThatExceptionOfType(SQLException.class)
                        .isThrownBy(() -> statement.execute("DELETE FROM " + table))
                        .withMessageContaining("is append-only");
            }
        }
    }

    @Test
    void removesNothingWhereThereIsNoDemo() throws Exception {
        Map<String, String> before = everything();
        assertThat(demo.remove()).isEqualTo("There is no demo to remove.");
        assertThat(everything()).isEqualTo(before);
    }

    @Test
    void canBeLoadedAgain() throws IOException {
        demo.load();
        demo.remove();
        assertThat(demo.load()).contains("with 16 animals");
        assertThat(person("demo-token").get("/api/v1/organisation").status()).isEqualTo(200);
    }

    @Test
    void isWhollyThereOrNotAtAllAndTheServiceCannotPointTheRemovalElsewhere() {
        demo.load();
        UUID other = organisations.create().id();
        for (String change : List.of(
                "UPDATE demo_organisation SET organisation_id = '" + other + "'",
                "INSERT INTO demo_organisation (organisation_id) VALUES ('" + other + "')")) {
            assertThatExceptionOfType(org.springframework.dao.DataAccessException.class)
                    .isThrownBy(() -> jdbc.sql(change).update());
        }
    }

    private Client person(String file) throws IOException {
        Path path = home.resolve(file);
        return new Client(port, new UUID(0, 0), Files.readString(path).strip());
    }

    private static List<JsonNode> looksAt(Client keeper, String name) {
        return items(of(keeper, name, "assessments"));
    }

    private static Answer of(Client keeper, String name, String what) {
        JsonNode animal = items(keeper.get("/api/v1/animals?limit=200")).stream()
                .filter(each -> each.path("name").asString("").equals(name))
                .findFirst()
                .orElseThrow();
        return keeper.get("/api/v1/animals/" + animal.get("id").stringValue() + "/" + what);
    }

    private static Map<String, String> conditions(Client keeper, String name) {
        Map<String, String> states = new TreeMap<>();
        of(keeper, name, "release-review")
                .json()
                .at("/conditions")
                .forEach(each -> states.put(
                        each.get("id").stringValue(), each.get("state").stringValue()));
        return states;
    }

    private static List<String> texts(JsonNode list, String field) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(each -> each.get(field).stringValue())
                .toList();
    }

    private static String resolve(String text, Map<String, String> ids) {
        String resolved = text;
        for (Map.Entry<String, String> id : ids.entrySet()) {
            resolved = resolved.replace(id.getKey(), id.getValue());
        }
        return resolved;
    }

    private static Answer read(Client keeper, JsonNode item) {
        return keeper.get(item.get("path").stringValue());
    }

    private static List<JsonNode> items(Answer page) {
        assertThat(page.status()).as(page.body()).isEqualTo(200);
        return StreamSupport.stream(page.json().at("/items").spliterator(), false)
                .toList();
    }

    /** A digest of all rows of each table. */
    private Map<String, String> everything() throws SQLException {
        Map<String, String> digests = new LinkedHashMap<>();
        List<String> tables = jdbc.sql(
                        "SELECT table_name FROM information_schema.columns WHERE column_name = 'organisation_id' ORDER BY 1")
                .query(String.class)
                .list();
        assertThat(tables).hasSizeGreaterThanOrEqualTo(28);
        try (Connection owner = owner();
                Statement statement = owner.createStatement()) {
            for (String table : tables) {
                try (var row = statement.executeQuery("SELECT count(*) || ' ' || coalesce(md5(string_agg(t::text, '|'"
                        + " ORDER BY t::text)), '') FROM " + table + " t")) {
                    row.next();
                    digests.put(table, row.getString(1));
                }
            }
        }
        return digests;
    }

    private Connection owner() throws SQLException {
        return DriverManager.getConnection(
                environment.getRequiredProperty("spring.datasource.url"),
                environment.getRequiredProperty("spring.flyway.user"),
                environment.getRequiredProperty("spring.flyway.password"));
    }
}
