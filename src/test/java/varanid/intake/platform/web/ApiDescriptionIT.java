package varanid.intake.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import varanid.intake.service.Answer;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The API's description says what every operation takes and how it refuses. */
@ServiceTest
class ApiDescriptionIT {

    @Autowired
    Organisations organisations;

    @Test
    void isOpenToAnybodyAsIsHealth() {
        assertThat(organisations.nobody().get("/v3/api-docs").status()).isEqualTo(200);
        assertThat(organisations.nobody().get("/actuator/health").text("/status"))
                .isEqualTo("UP");
        assertThat(organisations.nobody().get("/actuator").status()).isEqualTo(401);
    }

    @Test
    void describesBodiesHeadersAndProblemsOfEveryOperation() {
        Answer answer = organisations.nobody().get("/v3/api-docs");
        JsonNode description = answer.json();
        assertThat(description.get("openapi").stringValue()).startsWith("3.1");
        List<String> names = new ArrayList<>();
        description
                .get("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(entry -> {
                    String method = entry.getKey();
                    JsonNode operation = entry.getValue();
                    String what = method + " " + path.getKey();
                    names.add(operation.get("operationId").stringValue());
                    assertThat(operation.get("summary")).as(what).isNotNull();
                    assertThat(operation
                                    .at("/responses/401/content/application~1problem+json/schema/$ref")
                                    .asString())
                            .as(what)
                            .endsWith("/Problem");
                    String parameters = operation.has("parameters")
                            ? operation.get("parameters").toString()
                            : "";
                    if (!method.equals("get")) {
                        JsonNode content = operation.at("/requestBody/content");
                        assertThat(content.propertyNames())
                                .as(what)
                                .hasSize(1)
                                .isSubsetOf("application/json", "multipart/form-data");
                        assertThat(content.iterator().next().at("/schema/$ref").asString())
                                .as(what)
                                .startsWith("#/components/schemas/");
                        assertThat(operation.get("responses").has("422"))
                                .as(what)
                                .isTrue();
                    }
                    if (method.equals("post")) {
                        assertThat(parameters).as(what).contains("Idempotency-Key");
                    }
                    if (method.equals("put")) {
                        assertThat(parameters).as(what).contains("If-Match");
                        assertThat(operation.get("responses").has("428"))
                                .as(what)
                                .isTrue();
                    }
                    assertThat(parameters)
                            .as(what)
                            .doesNotContain("organisationId")
                            .doesNotContain("secret");
                }));
        assertThat(names).doesNotHaveDuplicates().contains("animal.register", "animal.list");
    }
}
