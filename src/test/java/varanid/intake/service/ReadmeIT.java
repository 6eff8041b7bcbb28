package varanid.intake.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the README shows is what the service answers. */
@ServiceTest
class ReadmeIT {

    private static final String CUT = "…";

    @Autowired
    private Organisations organisations;

    @Test
    void theExampleRequestGetsTheExampleReply() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        String request = first(readme, "(?s)/api/v1/scores .*? -d '\n(\\{.*?\\n\\})'");
        JsonNode shown = JsonMapper.shared().readTree(first(readme, "(?s)```json\n(.*?)```"));

        Answer answer = organisations.create().keeper().post("/api/v1/scores", request);

        assertThat(answer.status()).isEqualTo(200);
        assertThat(shown.size()).isGreaterThan(5);
        assertShown("", shown, answer.json());
    }

    private static String first(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as("the README has %s", pattern).isTrue();
        return matcher.group(1);
    }

    /** Everything shown is there; a list may be cut, and says so. */
    private static void assertShown(String where, JsonNode shown, JsonNode real) {
        if (shown.isObject()) {
            for (Map.Entry<String, JsonNode> member : shown.properties()) {
                String here = where + "/" + member.getKey();
                assertThat(real.has(member.getKey())).as(here).isTrue();
                assertShown(here, member.getValue(), real.get(member.getKey()));
            }
        } else if (shown.isArray()) {
            boolean cut =
                    !shown.isEmpty() && shown.get(shown.size() - 1).asString("").equals(CUT);
            int count = cut ? shown.size() - 1 : shown.size();
            if (cut) {
                assertThat(real.size()).as(where).isGreaterThan(count);
            } else {
                assertThat(real.size()).as(where).isEqualTo(count);
            }
            for (int i = 0; i < count; i++) {
                assertShown(where + "/" + i, shown.get(i), real.get(i));
            }
        } else if (shown.isNumber()) {
            assertThat(real.decimalValue()).as(where).isEqualByComparingTo(shown.decimalValue());
        } else {
            assertThat(real).as(where).isEqualTo(shown);
        }
    }
}
