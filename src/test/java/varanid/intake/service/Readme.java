package varanid.intake.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;

/** The README, and whether what it shows is what the service answers. */
public final class Readme {

    private static final String CUT = "…";

    private static final Pattern DATE =
            Pattern.compile("\\d{4}-\\d{2}-\\d{2}|([A-Z][a-z]+day )?\\d{1,2} [A-Z][a-z]+ \\d{4}");

    private Readme() {}

    public static String text() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    static String first(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as("the README has %s", pattern).isTrue();
        return matcher.group(1);
    }

    /** Everything shown is there, on whatever day; a list or a text may be cut, and says so. */
    public static void assertShown(String where, JsonNode shown, JsonNode real) {
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
        } else if (shown.isString()) {
            assertText(where, shown.stringValue(), real.asString(""));
        } else {
            assertThat(real).as(where).isEqualTo(shown);
        }
    }

    private static void assertText(String where, String shown, String real) {
        if (shown.endsWith(CUT)) {
            assertThat(real).as(where).startsWith(shown.substring(0, shown.length() - CUT.length()));
        } else {
            assertThat(DATE.matcher(real).replaceAll("DATE"))
                    .as(where)
                    .isEqualTo(DATE.matcher(shown).replaceAll("DATE"));
        }
    }
}
