package varanid.intake.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the README shows is what the service answers. */
@ServiceTest
class ReadmeIT {

    @Autowired
    private Organisations organisations;

    @Test
    void theExampleRequestGetsTheExampleReply() throws IOException {
        String readme = Readme.text();
        String request = Readme.first(readme, "(?s)/api/v1/scores .*? -d '\n(\\{.*?\\n\\})'");
        JsonNode shown = JsonMapper.shared().readTree(Readme.first(readme, "(?s)```json\n(.*?)```"));

        Answer answer = organisations.create().keeper().post("/api/v1/scores", request);

        assertThat(answer.status()).isEqualTo(200);
        assertThat(shown.size()).isGreaterThan(5);
        Readme.assertShown("", shown, answer.json());
    }
}
